import { type Audit, auditor } from "@/lib/domain/ledger/audit";
import { PLACES } from "@/lib/domain/ledger/posting";
import { type StockValue, stockValue } from "@/lib/domain/ledger/valuation";
import { booksOfTexts, loadTexts } from "@/lib/store/books";
import { openReader, type Sql } from "@/lib/store/connection";
import { openStore } from "@/lib/store/open-store";
import { recordsIn } from "@/lib/store/post-to-books";
import { balancesIn, dayTotalsIn } from "./balances";
import { postingsFrom } from "./ledger-reading";

export interface CheckedBooks extends Audit {
  /** As the balances have it. */
  readonly value: StockValue;
  readonly currency: string;
}

const POSTINGS_AT_ONCE = 2000;

/** Recomputes the books of the store in this file from every entry. @returns null where it holds no workshop */
export async function checkLedger(file: string): Promise<CheckedBooks | null> {
  await openStore(file);
  // A connection of its own: one transaction sees one state, and nobody else's question falls into it.
  const reader = await openReader(file);
  try {
    return await reader.alone(async (sql) => {
      await sql.run("BEGIN");
      return await checked(sql);
    });
  } finally {
    await reader.close();
  }
}

async function checked(sql: Sql): Promise<CheckedBooks | null> {
  const books = booksOfTexts(await loadTexts(sql));
  if (books === null) return null;
  const audit = auditor(await recordsIn(sql, books));
  let after = 0;
  for (;;) {
    const postings = await postingsFrom(sql, after, POSTINGS_AT_ONCE);
    postings.forEach(audit.take);
    const last = postings.at(-1);
    if (!last) break;
    after = last.sequence;
  }
  const kept = await balancesIn(sql, PLACES);
  const closedRuns = books.desk.closedRuns.map(({ run }) => run.id);
  const value = stockValue(
    kept.map(({ lot, place, value: worth }) => ({ of: lot.of, place: place.kind, value: worth })),
  );
  return {
    ...audit.finish({ balances: kept, dayTotals: await dayTotalsIn(sql) }, closedRuns),
    value,
    currency: books.workshop.settings.currency,
  };
}
