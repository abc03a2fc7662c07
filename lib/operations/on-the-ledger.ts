import type { Day } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import type { StruckOffLot } from "@/lib/domain/ledger/past";
import type { Receipt } from "@/lib/domain/ledger/receipt";
import type { LotName, Posting } from "@/lib/domain/ledger/posting";
import type { NoWorkshop } from "@/lib/store/change-books";
import {
  type AlreadyPosted,
  type Ledger,
  type PostDecision,
  postOnce,
  postToBooks,
  type Reach,
} from "@/lib/store/post-to-books";

/** What every form that posts says. */
export interface Asked {
  /** Made when the form is drawn: sent twice it is one posting. @rule LEDGER-3 */
  readonly key: string;
  /** The day for which it is posted. */
  readonly day: Day;
  /** Counts where the workshop is not set to a day of its own. */
  readonly realToday: Day;
}

/** A decision that posts nothing and keeps other records than before. */
interface Keeps {
  readonly kind: string;
  readonly keeps: Books;
}

/** A decision that posts; its books are those as they are to be, where more than the ledger changes. */
interface Posts {
  readonly kind: "posted";
  readonly posting: Posting;
  readonly books?: Books;
  readonly failed?: StruckOffLot;
  readonly receipts?: readonly Receipt[];
}

/** What a decision tells: all of it but the books. */
export type Told<Decided> = Decided extends { readonly kind: "posted" }
  ? Omit<Decided, "books" | "failed" | "receipts">
  : Decided extends Keeps
    ? Omit<Decided, "keeps">
    : Decided;

/** Today, as the workshop has it. */
export const todayIn = ({ workshop }: Books, realToday: Day): Day => workshop.settings.today ?? realToday;

/**
 * Loads, decides and posts in one transaction.
 * @param decide  where it posts, it says so with `posted`; where it posts nothing and says what it `keeps`, those books are kept
 * @param reach   "any row" where records that others name are among those that change
 */
export const onTheLedger = <Decided extends { readonly kind: string }>(
  { key, realToday }: Pick<Asked, "key" | "realToday">,
  decide: (ledger: Ledger, today: Day) => Promise<Decided>,
  reach?: Reach,
): Promise<Told<Decided> | NoWorkshop | AlreadyPosted> => postOnce(key, deciding(decide, realToday), reach);

/** The same where nothing is posted, and what the ledger says decides whether records change. */
export const besideTheLedger = <Decided extends { readonly kind: string }>(
  realToday: Day,
  decide: (ledger: Ledger, today: Day) => Promise<Decided>,
): Promise<Told<Decided> | NoWorkshop> => postToBooks(deciding(decide, realToday), "any row");

const deciding =
  <Decided extends { readonly kind: string }>(
    decide: (ledger: Ledger, today: Day) => Promise<Decided>,
    realToday: Day,
  ) =>
  async (ledger: Ledger): Promise<PostDecision<Told<Decided>>> => {
    const decided = await decide(ledger, todayIn(ledger.books, realToday));
    if (!posts(decided)) {
      const { keeps, ...told } = decided as Decided & { readonly keeps?: Books };
      const result = told as unknown as Told<Decided>;
      return keeps === undefined ? { kind: "refuse", result } : { kind: "keep", books: keeps, result };
    }
    const { books, failed, receipts, ...told } = decided;
    const result = told as unknown as Told<Decided>;
    return {
      kind: "post",
      posting: decided.posting,
      books: books ?? ledger.books,
      failed: failed ?? null,
      receipts: receipts ?? [],
      result,
    };
  };

/** What would be posted, and is not. */
export type Looked<Decided> =
  | Exclude<Decided, { readonly kind: "posted" }>
  | (Omit<Extract<Decided, { readonly kind: "posted" }>, "kind"> & { readonly kind: "would post" });

/** A decision that is only looked at: nothing of it is saved. */
export const onlyLooking = <Decided extends { readonly kind: string }>(decided: Decided): Looked<Decided> =>
  (decided.kind === "posted" ? { ...decided, kind: "would post" } : decided) as Looked<Decided>;

const posts = (decided: { readonly kind: string }): decided is Posts => decided.kind === "posted";

/** The lots that lines name, each once. */
export const namedIn = (lines: readonly { readonly lot: LotName }[]): readonly LotName[] => [
  ...new Map(lines.map(({ lot }) => [`${lot.of} ${lot.id}`, lot])).values(),
];
