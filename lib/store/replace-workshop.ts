import { type Desk, emptyDesk } from "@/lib/domain/desk";
import { type Past, pastOpening } from "@/lib/domain/ledger/past";
import type { Workshop } from "@/lib/domain/workshop";
import { textsOfBooks } from "./books";
import type { Sql } from "./connection";
import { keepCopy } from "./kept-copy";
import { post } from "./ledger/posting-rows";
import { keepReceipts } from "./ledger/receipts";
import { keepStruckOff } from "./ledger/struck-off";
import { applyAll } from "./migrate";
import { migrationFiles, migrationsFolder } from "./migration-files";
import { openStore } from "./open-store";
import { TABLE_NAMES, TABLES } from "./tables";
import { inOneTransaction } from "./transaction";

export type Replaced =
  /** Where the old store was kept, or null where it held no workshop. */
  | { readonly kind: "replaced"; readonly keptAs: string | null }
  /** Nothing was changed: there was to be none, and there is one. */
  | { readonly kind: "one is there" };

/**
 * Makes the store of this file afresh with this workshop, its past and an empty desk in it, in one transaction: whoever
 * reads beside it, and whoever opens the file after the power went, finds all of the old or all of the new. The tables are dropped and made
 * again, so that a rule which forbids changing or deleting what was written does not stand in the way. The file
 * itself stays: a running server has it open, and SQLite finds the log beside it by its name.
 * @param over  what may be there before
 * @param past  by default nothing but what stands, with which the books open
 */
export async function replaceWorkshop(
  file: string,
  workshop: Workshop,
  over: "anything" | "nothing" = "anything",
  past: Past = pastOpening(workshop),
): Promise<Replaced> {
  const texts = textsOfBooks({ workshop, desk: deskWith(past) });
  const migrations = migrationFiles(migrationsFolder());
  const { writer } = await openStore(file);
  return writer.alone((sql) =>
    inOneTransaction(sql, async (): Promise<Replaced> => {
      const isHeld = await holdsWorkshop(sql);
      if (isHeld && over === "nothing") return { kind: "one is there" };
      const keptAs = isHeld ? await keepCopy(file, new Date()) : null;
      await dropEverything(sql);
      await applyAll(sql, migrations);
      for (const name of TABLE_NAMES) await sql.run(TABLES[name].insert, texts[name]);
      await keepStruckOff(sql, past.struckOff);
      await post(sql, past.postings);
      await keepReceipts(sql, past.receipts);
      return { kind: "replaced", keptAs };
    }),
  );
}

/** A file carries a part of the desk as its past. */
const deskWith = ({ closedRuns, versions, trials, batches }: Past): Desk => ({
  ...emptyDesk,
  closedRuns,
  versions,
  trials,
  batches,
});

async function holdsWorkshop(sql: Sql): Promise<boolean> {
  const [held] = await sql.rows("SELECT 1 FROM settings");
  return held !== undefined;
}

/** Triggers before tables, or dropping a table could set one off; indexes go with their tables. */
async function dropEverything(sql: Sql): Promise<void> {
  for (const kind of ["trigger", "view", "table"]) {
    const names = await sql.rows(
      "SELECT name FROM sqlite_master WHERE type = ? AND name NOT LIKE 'sqlite~_%' ESCAPE '~'",
      kind,
    );
    for (const [name] of names) await sql.run(`DROP ${kind} "${String(name).replaceAll('"', '""')}"`);
  }
}
