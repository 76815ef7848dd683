// Starting the programs of a browser so that all of them can be killed at once.
import assert from "node:assert/strict";
import { spawn } from "node:child_process";
import { connect, createServer } from "node:net";
import { setTimeout } from "node:timers/promises";

/** Starts a program in a process group of its own: `{ process, kill }`. `kill` is SIGKILL for the whole group. */
export function startGroup(program, args, { env = {}, stdio = "ignore" } = {}) {
  const process = spawn(program, args, { detached: true, stdio, env: { ...globalThis.process.env, ...env } });
  const ended = new Promise((done) => {
    process.on("exit", done);
    process.on("error", done);
  });
  const kill = async () => {
    try {
      globalThis.process.kill(-process.pid, "SIGKILL");
    } catch (error) {
      if (error.code !== "ESRCH") throw error;
    }
    await ended;
  };
  return { process, kill };
}

/** Does the rest of a start; kills what has been started if that fails. */
export async function orKill(kill, rest) {
  try {
    return await rest();
  } catch (error) {
    await kill();
    throw error;
  }
}

/** Resolves to what `pattern` captures in a stream; rejects when the stream ends without it. */
export function captured(stream, pattern) {
  return new Promise((resolve, reject) => {
    let text = "";
    stream.setEncoding("utf8");
    stream.on("data", (data) => {
      if (text === null) return;
      text += data;
      const found = pattern.exec(text);
      if (!found) return;
      text = null;
      resolve(found[1]);
    });
    stream.on("end", () => reject(new assert.AssertionError({ message: `${pattern} in: ${text}` })));
  });
}

/** A TCP port that nothing listens on. */
export async function freePort() {
  const server = createServer();
  await new Promise((ready) => server.listen(0, "127.0.0.1", ready));
  const { port } = server.address();
  await new Promise((closed) => server.close(closed));
  return port;
}

/** Waits until something listens on this port, as long as the process runs. */
export async function listening(port, process) {
  for (;;) {
    assert.ok(process.exitCode === null && process.signalCode === null, "the driver runs");
    const open = await new Promise((answer) => {
      const socket = connect(port, "127.0.0.1");
      socket.on("connect", () => { socket.destroy(); answer(true); }).on("error", () => answer(false));
    });
    if (open) return;
    await setTimeout(20);
  }
}
