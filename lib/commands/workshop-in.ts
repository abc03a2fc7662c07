import type { Day } from "@/lib/domain/calendar";
import { type FileReading, readWorkshopFile } from "@/lib/edge/workshop-file";
import { bytesOf } from "./named-file";
import { Refusal } from "./refusal";

/** The workshop in a file, with its past where the file holds one. @throws Refusal with every fault of the file */
export function workshopIn(name: string, realToday: Day): Extract<FileReading, { readonly kind: "read" }> {
  const reading = readWorkshopFile(bytesOf(name), realToday);
  if (reading.kind === "refused") throw new Refusal(reading.faults);
  return reading;
}
