// Worker that runs the app's own code for work on the whole journal: importing, exporting and folding it. The page stays
// free meanwhile, and gets the memory back when it ends the worker (src/platform/app_worker.rs, src/store/long_work/).
import init, { work } from "./lastpull.js";

globalThis.lastpullFolder = new URL("./", import.meta.url).href;
const started = init();

// A panic of the app or the end of memory leaves no answer. Without one, the page does the work itself.
const fail = () => postMessage({ failed: true });
addEventListener("unhandledrejection", (event) => { event.preventDefault(); fail(); });

onmessage = async ({ data: [task, file] }) => {
  const { memory } = await started;
  const tell = (message) => postMessage({ ...message, memory: memory.buffer.byteLength });
  const answer = await work(task, file, (step, done, of) => tell({ progress: [step, done, of] }));
  tell(answer);
};

await started;
postMessage({ ready: true });
