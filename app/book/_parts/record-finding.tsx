import type { ReactNode } from "react";
import Link from "next/link";
import { type Books, RETIRABLE } from "@/lib/domain/desk";
import type { Day } from "@/lib/domain/calendar";
import type { Usage, User } from "@/lib/domain/usage-of";
import type { Workshop } from "@/lib/domain/workshop";
import { amountShown, dayShown } from "@/lib/edge/figures";
import { counted, inARow } from "@/lib/edge/counted";
import { recordPath } from "./addresses";
import type { Said } from "./row-view";
import { type Section, sectionOf } from "./sections";

interface Found {
  readonly books: Books;
  readonly section: Section;
  readonly id: string;
  readonly says: Said;
}

/** What the record is in a sentence: the figures that stand in its row of the section. */
export function RecordFinding({ books, section, id, says }: Found): ReactNode {
  const list = RETIRABLE.find((retirable) => retirable === section);
  const isRetired = list !== undefined && books.desk.retired[list].includes(id);
  return (
    <>
      {isRetired && <>Retired: it is not offered for new work. </>}
      {says.map((part, at) =>
        typeof part === "string" ? (
          part
        ) : (
          <b key={at}>{part.to === undefined ? part.figure : <Link href={part.to}>{part.figure}</Link>}</b>
        ),
      )}
    </>
  );
}

const USER_WORDS: Readonly<Record<Usage["list"], readonly [string, string]>> = {
  offers: ["offer", "offers"],
  lots: ["lot", "lots"],
  orders: ["order", "orders"],
  formulas: ["formula", "formulas"],
  drafts: ["draft", "drafts"],
  versions: ["earlier version", "earlier versions"],
  trials: ["trial", "trials"],
  products: ["product", "products"],
  runs: ["planned run", "planned runs"],
  finished: ["finished lot", "finished lots"],
  sales: ["sale", "sales"],
  closedRuns: ["run that was made", "runs that were made"],
  batches: ["batch at the bench", "batches at the bench"],
  labels: ["label", "labels"],
};

const MOST_NAMED = 8;

/** By its name, or by its day where that is what it is known by. */
const userNamed = ({ name, on, id }: User, today: Day): string =>
  name ?? (on === null ? (id ?? "") : dayShown(on, today, { year: true }));

/** What tells one offer from another of the same name. */
function packOf(id: string | null, { offers }: Workshop): string {
  const offer = offers.find((one) => one.id === id);
  return offer === undefined ? "" : `, ${amountShown(offer.pack.typed)}`;
}

/** What a record is used by, list by list, each with a way to it. */
export function UsedBy({
  usages,
  workshop,
  today,
}: {
  readonly usages: readonly Usage[];
  readonly workshop: Workshop;
  readonly today: Day;
}): ReactNode {
  if (usages.length === 0) return null;
  const counts = usages.map(({ list: by, users }) => counted(users.length, ...USER_WORDS[by]));
  return (
    <>
      <p>It is used by {inARow(counts)}, so it cannot be removed.</p>
      <ul className="used-by">
        {usages.flatMap(({ list: by, users }) => {
          const to = sectionOf(by);
          const further = users.length - MOST_NAMED;
          return [
            ...users.slice(0, MOST_NAMED).map((user, at) => (
              <li key={`${by} ${String(user.id)} ${String(at)}`}>
                {to !== null && user.id !== null ? (
                  <Link href={recordPath(to, user.id)}>{userNamed(user, today)}</Link>
                ) : (
                  userNamed(user, today)
                )}{" "}
                <span className="label">
                  {USER_WORDS[by][0]}
                  {by === "offers" && packOf(user.id, workshop)}
                </span>
              </li>
            )),
            ...(further > 0
              ? [
                  <li key={`${by} further`} className="label further">
                    and {counted(further, "more", "more")} {USER_WORDS[by][further === 1 ? 0 : 1]}
                  </li>,
                ]
              : []),
          ];
        })}
      </ul>
    </>
  );
}
