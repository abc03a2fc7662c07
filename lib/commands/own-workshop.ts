import { existsSync } from "node:fs";
import type { Workshop } from "@/lib/domain/workshop";
import { readWorkshop } from "@/lib/store/books";
import { storeFile } from "@/lib/store/store-file";
import { Refusal } from "./refusal";

/** The workshop in the app's own store. No store is made where there is none. @throws Refusal where there is none */
export async function ownWorkshop(): Promise<Workshop> {
  const workshop = existsSync(storeFile()) ? await readWorkshop() : null;
  if (workshop) return workshop;
  throw new Refusal([`${storeFile()} holds no workshop yet: npm run load -- FILE opens one, and so does the app.`]);
}
