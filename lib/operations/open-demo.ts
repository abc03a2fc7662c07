import { readFile } from "node:fs/promises";
import path from "node:path";
import type { Workshop } from "@/lib/domain/workshop";
import { type Opened, openWorkshop } from "./open-workshop";

/** How the caller reads a workshop file; reading text is the edge's work, which operations do not ask. */
type ReadFile = (
  bytes: Uint8Array,
) =>
  | { readonly kind: "read"; readonly workshop: Workshop }
  | { readonly kind: "refused"; readonly faults: readonly string[] };

/** Opens the demo workshop, which comes with the program as a workshop file. */
export async function openDemo(read: ReadFile): Promise<Opened> {
  const file = path.join(/* turbopackIgnore: true */ process.cwd(), "seed", "demo-workshop.json");
  const reading = read(await readFile(file));
  // The demo is ours: a fault in it is a fault of the program.
  if (reading.kind === "refused") throw new Error(`the demo workshop cannot be read: ${reading.faults.join("; ")}`);
  return openWorkshop(reading.workshop);
}
