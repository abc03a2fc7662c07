/** `npm run load -- FILE`: opens a workshop file in the app's own store. What the store held is kept. */
import { realToday } from "@/lib/edge/real-today";
import { openWorkshop } from "@/lib/operations/open-workshop";
import { storeFile } from "@/lib/store/store-file";
import { readArguments } from "./arguments";
import { Refusal, runCommand } from "./refusal";
import { workshopIn } from "./workshop-in";

const USAGE = "npm run load -- FILE";

async function load(given: readonly string[]): Promise<string> {
  const { file } = readArguments(given, { flags: [], values: [], file: true, usage: USAGE });
  if (file === null) throw new Refusal([`Name the workshop file to load. Write: ${USAGE}`]);
  const { workshop, past } = workshopIn(file, realToday());
  const { keptAs } = await openWorkshop(workshop, past);
  const kept = keptAs === null ? "" : `What it held before is kept in ${keptAs}.\n`;
  return `${workshop.settings.name} is open in ${storeFile()}.\n${kept}`;
}

await runCommand(load);
