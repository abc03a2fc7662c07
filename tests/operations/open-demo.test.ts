import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { realToday } from "@/lib/edge/real-today";
import { readWorkshopFile, writeWorkshopFile } from "@/lib/edge/workshop-file";
import { openDemo } from "@/lib/operations/open-demo";
import { readWorkshop } from "@/lib/store/books";
import { storeForEachTest } from "../helpers/store-folder";

storeForEachTest();
const read = (bytes: Uint8Array) => readWorkshopFile(bytes, realToday());

test("[FILE-4] the demo opens, and is in the store as it is in its file", async () => {
  expect(await openDemo(read)).toEqual({ kind: "opened", keptAs: null });
  const inFile = read(readFileSync("seed/demo-workshop.json"));
  const inStore = await readWorkshop();
  expect(inFile).toEqual({ kind: "read", workshop: inStore });
  expect(inStore && writeWorkshopFile(inStore)).toBe(inFile.kind === "read" && writeWorkshopFile(inFile.workshop));
});

test("a demo that cannot be read is a fault of the program, and opens nothing", async () => {
  await expect(openDemo(() => ({ kind: "refused", faults: ["lots: missing"] }))).rejects.toThrow("lots: missing");
  expect(await readWorkshop()).toBeNull();
});
