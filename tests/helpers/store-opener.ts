/** A process that opens one workshop after another in its store until it is killed. */
import { openWorkshop } from "@/lib/operations/open-workshop";
import { numberedWorkshop } from "./store-workshop";

for (let number = 1; ; number += 1) {
  await openWorkshop(numberedWorkshop(number));
  process.stdout.write(`${String(number)}\n`);
}
