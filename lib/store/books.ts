import type { Workshop } from "@/lib/domain/workshop";
import type { Cell, Table } from "./columns";
import { openStore } from "./open-store";
import { storeFile } from "./store-file";
import { type Rows, TABLE_NAMES, TABLES } from "./tables";
import { workshopOfRows } from "./workshop-of-rows";

/** Every table in one statement: one statement sees one state of the store, never half of an import. */
const EVERYTHING = TABLE_NAMES.map((name) => `(${TABLES[name].select}) AS "${name}"`).join(", ");

/** What the app's store holds, or null where no workshop has been opened yet. */
export const readWorkshop = (): Promise<Workshop | null> => readWorkshopFrom(storeFile());

/** What the store in this file holds. @throws StoreUnusable */
export async function readWorkshopFrom(file: string): Promise<Workshop | null> {
  const { reader } = await openStore(file);
  const [texts] = await reader.alone((sql) => sql.rows(`SELECT ${EVERYTHING}`));
  const rows = TABLE_NAMES.map((name, index) => {
    const { rowOf } = TABLES[name] as Table<unknown>;
    return [name, (JSON.parse(String(texts?.[index])) as Cell[][]).map(rowOf)];
  });
  return workshopOfRows(Object.fromEntries(rows) as Rows);
}
