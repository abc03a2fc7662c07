import { readFileSync, statSync } from "node:fs";
import path from "node:path";
import { UPLOAD_LIMIT_BYTES } from "@/lib/edge/local-request";
import { Refusal } from "./refusal";

/**
 * The file that an argument names. npm runs a command in the project's folder; a relative name means the folder in
 * which the person typed it.
 */
export const namedFile = (name: string): string =>
  path.resolve((process.env.npm_lifecycle_event === undefined ? undefined : process.env.INIT_CWD) ?? "", name);

/** What is in the file. @throws Refusal where it cannot be read */
export function bytesOf(name: string): Uint8Array {
  const file = namedFile(name);
  try {
    const { size } = statSync(file);
    if (size <= UPLOAD_LIMIT_BYTES) return readFileSync(file);
  } catch (fault) {
    throw new Refusal([`${name}: ${inWords(fault)}`]);
  }
  throw new Refusal([`${name}: larger than ${String(UPLOAD_LIMIT_BYTES / 2 ** 20)} MiB, the most that is read`]);
}

/** Why the system would not read or write a file. */
export function inWords(fault: unknown): string {
  const code = fault instanceof Error && "code" in fault ? String(fault.code) : "";
  const words: Readonly<Record<string, string>> = {
    ENOENT: "there is no such file or folder; check the name",
    ENOTDIR: "part of the name is a file, not a folder; check the name",
    EISDIR: "this is a folder; name a file in it",
    EACCES: "you may not use this file; check its permissions",
    EPERM: "you may not use this file; check its permissions",
    EROFS: "nothing can be written there; choose another folder",
    ENOSPC: "the disk is full",
    ENAMETOOLONG: "the name is too long",
  };
  return words[code] ?? (fault instanceof Error ? fault.message : String(fault));
}
