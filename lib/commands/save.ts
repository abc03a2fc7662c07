/** `npm run save -- FILE`: writes the app's own workshop as a workshop file. @rule FILE-4 */
import { closeSync, existsSync, fsyncSync, openSync, renameSync, rmSync, statSync, writeSync } from "node:fs";
import { writeWorkshopFile } from "@/lib/edge/workshop-file";
import { readArguments } from "./arguments";
import { inWords, namedFile } from "./named-file";
import { ownBooks } from "./own-workshop";
import { Refusal, runCommand } from "./refusal";

const USAGE = "npm run save -- FILE";

async function save(given: readonly string[]): Promise<string> {
  const { file: name } = readArguments(given, { flags: [], values: [], file: true, usage: USAGE });
  if (name === null) throw new Refusal([`Name the file to write. Write: ${USAGE}`]);
  const file = namedFile(name);
  const { workshop, past } = await ownBooks();
  const replaced = existsSync(file);
  try {
    writeWhole(file, writeWorkshopFile(workshop, past));
  } catch (fault) {
    throw new Refusal([`${name}: ${inWords(fault)}`]);
  }
  return `${workshop.settings.name} is saved in ${file}${replaced ? ", in place of the file that was there" : ""}.\n`;
}

/** Whoever opens the file finds the old or the new, never a part: it is written beside and takes the name when it is done. */
function writeWhole(file: string, text: string): void {
  if (existsSync(file) && statSync(file).isDirectory()) throw Object.assign(new Error(), { code: "EISDIR" });
  const unfinished = `${file}.unfinished-${String(process.pid)}`;
  try {
    const handle = openSync(unfinished, "wx");
    try {
      const bytes = Buffer.from(text);
      for (let written = 0; written < bytes.length; written += writeSync(handle, bytes, written));
      fsyncSync(handle);
    } finally {
      closeSync(handle);
    }
    renameSync(unfinished, file);
  } catch (fault) {
    rmSync(unfinished, { force: true });
    throw fault;
  }
}

await runCommand(save);
