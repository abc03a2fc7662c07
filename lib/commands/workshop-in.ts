import type { Day } from "@/lib/domain/calendar";
import type { Workshop } from "@/lib/domain/workshop";
import { readWorkshopFile } from "@/lib/edge/workshop-file";
import { bytesOf } from "./named-file";
import { Refusal } from "./refusal";

/** The workshop in a file. @throws Refusal with every fault of the file */
export function workshopIn(name: string, realToday: Day): Workshop {
  const reading = readWorkshopFile(bytesOf(name), realToday);
  if (reading.kind === "refused") throw new Refusal(reading.faults);
  return reading.workshop;
}
