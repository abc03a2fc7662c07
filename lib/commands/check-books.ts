/** `npm run check-books`: recomputes the books of the app's own store from every entry. @rule LEDGER-23 */
import { existsSync } from "node:fs";
import { moneyTextInFull, type CurrencyCode } from "@/lib/domain/money";
import { type Value, wholeValue } from "@/lib/domain/ledger/posting";
import { checkLedger } from "@/lib/store/ledger/check-ledger";
import { storeFile } from "@/lib/store/store-file";
import { readArguments } from "./arguments";
import { Refusal, runCommand } from "./refusal";

const USAGE = "npm run check-books";

async function checkBooks(given: readonly string[]): Promise<string> {
  readArguments(given, { flags: [], values: [], file: false, usage: USAGE });
  const checked = existsSync(storeFile()) ? await checkLedger(storeFile()) : null;
  if (!checked) throw new Refusal([`${storeFile()} holds no workshop yet, so there is nothing to check.`]);
  const { disagreements, postings, entries, lots, value, currency } = checked;
  const money = (of: Value): string => moneyTextInFull(wholeValue(of), currency as CurrencyCode);
  const totals = [
    `${String(postings)} postings`,
    `${String(entries)} entries`,
    `${String(lots)} lots`,
    `stock worth ${money(value.total)} ${currency} (materials ${money(value.materials)}, in work ${money(value.workInProgress)}, finished ${money(value.finished)})`,
    `${String(disagreements.length)} disagreements`,
  ].join(", ");
  if (disagreements.length > 0) throw new Refusal([...disagreements, totals]);
  return `${totals}\n`;
}

await runCommand(checkBooks);
