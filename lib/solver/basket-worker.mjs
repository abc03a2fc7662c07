// The thread's first file. It is plain JavaScript, since a thread starts without the loader that reads TypeScript, under
// the commands as under the server; it brings the loader in and hands on.
import { register } from "tsx/esm/api";

register();
await import("./basket-thread.ts");
