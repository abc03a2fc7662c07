import { connect, createServer } from "node:net";
import { Refusal } from "./refusal";

/** Nobody but this computer can reach it. */
export const ADDRESS = "127.0.0.1";
const USUAL_PORT = 3000;

/** The port that PORT names, 3000 where it names none. @throws Refusal where it is not a port */
export function chosenPort(named: string | undefined): number {
  if (named === undefined || named === "") return USUAL_PORT;
  const port = Number(named);
  if (/^[1-9]\d{0,4}$/.test(named) && port <= 65_535) return port;
  throw new Refusal([`PORT must be a whole number from 1 to 65535, not ${JSON.stringify(named)}.`]);
}

/** @throws Refusal where another program has the port, or this one may not have it */
export function mustBeFree(port: number): Promise<void> {
  return new Promise((resolve, reject) => {
    const probe = createServer();
    probe.once("error", (fault: NodeJS.ErrnoException) => {
      reject(new Refusal([whyNot(port, fault)]));
    });
    probe.listen({ port, host: ADDRESS, exclusive: true }, () =>
      probe.close(() => {
        resolve();
      }),
    );
  });
}

function whyNot(port: number, fault: NodeJS.ErrnoException): string {
  const other = `Choose another port: PORT=${String(port === 65_535 ? USUAL_PORT : port + 1)} npm start`;
  if (fault.code === "EADDRINUSE") {
    return `Port ${String(port)} is in use by another program, or Stillroom is already running there. ${other}`;
  }
  if (fault.code === "EACCES") return `Port ${String(port)} may not be used by this account. ${other}`;
  return `Port ${String(port)} cannot be used: ${fault.message}. ${other}`;
}

/** Whether something answers on the port. */
export function answers(port: number): Promise<boolean> {
  return new Promise((resolve) => {
    const call = connect({ port, host: ADDRESS });
    call.once("connect", () => {
      call.destroy();
      resolve(true);
    });
    call.once("error", () => {
      resolve(false);
    });
  });
}
