/** A workshop's past as the lists that its file adds. Figures of postings are whole µg, pieces, units and micro-units. */
import { isoDate } from "@/lib/domain/calendar";
import type { ClosedRun } from "@/lib/domain/desk";
import type { Past, StruckOffLot } from "@/lib/domain/ledger/past";
import type { Receipt } from "@/lib/domain/ledger/receipt";
import type { Entry, Posted } from "@/lib/domain/ledger/posting";
import { batchWritten } from "./bench-writing";
import { trialWritten, versionsInOrder, versionWritten } from "./formula-history-writing";

type WrittenRecord = Readonly<Record<string, unknown>>;

export const pastWritten = ({ closedRuns, struckOff, postings, receipts, ...book }: Past): WrittenRecord => ({
  closedRuns: closedRuns.map(closedRunWritten),
  struckOff: struckOff.map(struckOffWritten),
  postings: postings.map(postingWritten),
  receipts: receipts.length === 0 ? undefined : receipts.map(receiptWritten),
  formulaVersions: book.versions.length === 0 ? undefined : versionsInOrder(book.versions).map(versionWritten),
  trials: book.trials.length === 0 ? undefined : book.trials.map(trialWritten),
  batches: book.batches.length === 0 ? undefined : book.batches.map(batchWritten),
});

const closedRunWritten = ({ run, madeOn, unitsMade, versions }: ClosedRun): WrittenRecord => ({
  id: run.id,
  product: run.product,
  date: isoDate(run.date),
  sequence: run.sequence === 0 ? undefined : run.sequence,
  units: Number(run.units),
  madeOn: isoDate(madeOn),
  unitsMade: Number(unitsMade),
  versions: versions.length === 0 ? undefined : versions,
});

const struckOffWritten = ({ lot, item, since, expires }: StruckOffLot): WrittenRecord => ({
  of: lot.of,
  id: lot.id,
  item: item ?? undefined,
  since: isoDate(since),
  expires: expires === null ? undefined : isoDate(expires),
});

const postingWritten = ({ id, kind, day, reason, reverses, entries }: Posted): WrittenRecord => ({
  id,
  kind,
  day: isoDate(day),
  reason: reason ?? undefined,
  reverses: reverses ?? undefined,
  entries: entries.map(entryWritten),
});

const receiptWritten = ({ lot, posting, supplier, offer, order, packs, paid }: Receipt): WrittenRecord => ({
  lot,
  posting,
  supplier: supplier ?? undefined,
  offer: offer ?? undefined,
  order: order?.id,
  line: order === null ? undefined : order.line + 1,
  packs: Number(packs),
  paid: figure(paid),
});

const entryWritten = ({ lot, place, quantity, value }: Entry): WrittenRecord => ({
  of: lot.of,
  lot: lot.id,
  place: place.kind,
  run: place.kind === "batch" ? place.run : undefined,
  quantity: figure(quantity),
  materials: figure(value.materials),
  labour: figure(value.labour),
  overhead: figure(value.overhead),
});

const figure = (value: bigint): number | undefined => (value === 0n ? undefined : Number(value));
