// A static file server on localhost, at "/" or below any path, for `./dev run` and the tests. It does what any static
// HTTPS host does.
import { createServer } from "node:http";
import { readFile } from "node:fs/promises";
import { extname, join, normalize, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";

const TYPES = {
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript",
  ".css": "text/css",
  ".wasm": "application/wasm",
  ".svg": "image/svg+xml",
  ".png": "image/png",
  ".webmanifest": "application/manifest+json",
};

/** Serves `folder` below `base`. Resolves to { url, close }. */
export function serve(folder, port = 0, base = "/") {
  const root = resolve(folder);
  const sockets = new Set();
  const server = createServer(async (request, response) => {
    const path = decodeURIComponent(new URL(request.url, "http://localhost").pathname);
    const inside = path.startsWith(base) ? path.slice(base.length) : null;
    const file = inside === null ? null : normalize(join(root, inside === "" || inside.endsWith("/") ? `${inside}index.html` : inside));
    try {
      if (file === null || !file.startsWith(root + sep)) throw new Error("outside");
      const data = await readFile(file);
      response.writeHead(200, { "content-type": TYPES[extname(file)] ?? "application/octet-stream", "cache-control": "no-cache" });
      response.end(data);
    } catch {
      response.writeHead(404, { "content-type": "text/plain" });
      response.end("not found");
    }
  });
  server.on("connection", (socket) => {
    sockets.add(socket);
    socket.on("close", () => sockets.delete(socket));
  });
  return new Promise((ready, failed) => {
    server.on("error", failed);
    server.listen(port, "127.0.0.1", () => {
      ready({
        port: server.address().port,
        url: `http://localhost:${server.address().port}${base}`,
        close: () => {
          const closed = new Promise((done) => server.close(done));
          for (const socket of sockets) socket.destroy();
          return closed;
        },
      });
    });
  });
}

if (process.argv[1] === fileURLToPath(import.meta.url)) {
  const [folder = "dist", port = "8420"] = process.argv.slice(2);
  serve(folder, Number(port))
    .then(({ url }) => console.log(`Lastpull is at ${url}  (Ctrl+C stops it)`))
    .catch((error) => {
      console.error(error.code === "EADDRINUSE" ? `Port ${port} is taken. Try: PORT=8421 ./dev run` : error.message);
      process.exit(1);
    });
}
