import "server-only";
import { readOnce } from "@/app/plan-for-page";
import type { Books } from "@/lib/domain/desk";
import type { StruckOffLot } from "@/lib/domain/ledger/past";
import type { LotName } from "@/lib/domain/ledger/posting";
import { finishedLot, lotKey, materialLot } from "@/lib/domain/ledger/posting";
import type { Recall } from "@/lib/domain/ledger/recall";
import { lotNamedBy } from "@/lib/edge/ledger-address";
import { type LotWords, lotWords } from "@/lib/edge/lot-words";
import { readRecall, readStruckOff } from "@/lib/store/ledger/ledger-answers";

export interface RecallOnPage {
  readonly books: Books;
  /** Every lot that the ledger may name. */
  readonly lots: readonly LotName[];
  readonly words: (lot: LotName) => LotWords;
  /** The lot that is asked for; null where none is, or where there is none of that name. */
  readonly lot: LotName | null;
  readonly recall: Recall | null;
}

/** The recall that an address asks for; null where no workshop is open. */
export async function recallForPage(asked: unknown): Promise<RecallOnPage | null> {
  const [books, struckOff] = await Promise.all([readOnce(), readStruckOff()]);
  if (!books) return null;
  const lots = lotsOf(books, struckOff);
  const named = lotNamedBy(asked);
  const lot = named && lots.some((each) => lotKey(each) === lotKey(named)) ? named : null;
  const recall = lot && (await readRecall(lot));
  return { books, lots, words: lotWords(books.workshop, struckOff), lot, recall };
}

const lotsOf = ({ workshop }: Books, struckOff: readonly StruckOffLot[]): readonly LotName[] => [
  ...workshop.finished.map(({ id }) => finishedLot(id)),
  ...workshop.lots.map(({ id }) => materialLot(id)),
  ...struckOff.map(({ lot }) => lot),
];
