import type { Metadata, Route } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Choice } from "@/app/_ui/choice";
import { DayChoice } from "@/app/_ui/day-choice";
import { Opening } from "@/app/_ui/finding";
import { newId } from "@/app/_ui/new-id";
import { countsDue } from "@/app/counts-due-for-page";
import { readOnce } from "@/app/plan-for-page";
import { type Day, dayOf, isoDate } from "@/lib/domain/calendar";
import type { Books } from "@/lib/domain/desk";
import { inWordsFirst } from "@/lib/edge/counted";
import { longDayShown } from "@/lib/edge/figures";
import { realToday } from "@/lib/edge/real-today";
import { readStockOn } from "@/lib/store/ledger/ledger-answers";
import { CountForm } from "../_parts/count-form";
import { type CountedLot, lotsToCount } from "../_parts/lots-to-count";
import { ShelfCrumb } from "../_parts/shelf-crumb";
import { countTheShelf } from "./actions";
import "../shelf.css";

export const metadata: Metadata = { title: "Count the shelf" };

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

const ASKED = ["left", "due", "all"] as const;
type Asked = (typeof ASKED)[number];

const NOTHING: Readonly<Record<Asked, string>> = {
  left: "Nothing is on the shelf to be counted.",
  due: "Nothing that is due for a count is on the shelf.",
  all: "Nothing is on the shelf to be counted.",
};

/** What the balance shows of some or all lots takes the place of what was written down, as one posting. */
export default async function CountPage({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const [books, parameters] = await Promise.all([readOnce(), searchParams]);
  if (!books) redirect("/");
  const today = books.workshop.settings.today ?? realToday();
  const wanted = typeof parameters.day === "string" ? dayOf(parameters.day) : null;
  const day = wanted === null || wanted > today ? today : wanted;
  const asked = ASKED.find((each) => each === parameters.lots) ?? "left";
  const lots = await lotsAsked(books, today, day, asked);
  // What has no lot at all can be counted on no day.
  const hasLots = books.workshop.lots.length + books.workshop.finished.length > 0;
  return (
    <>
      <Opening
        crumb={<ShelfCrumb />}
        title="Count the shelf"
        beside={
          hasLots && (
            <Choice
              name="Lots"
              options={ASKED.map((each) => ({ ...option(each, day, today), chosen: each === asked }))}
            />
          )
        }
      >
        {wanted !== null && wanted > today && `${longDayShown(wanted, today)} is still to come; this is for today. `}
        {lots.length === 0 ? NOTHING[asked] : toCount(lots.length, day, today)}{" "}
        {hasLots && <Link href="/shelf/count/due">When to count</Link>}
      </Opening>
      {hasLots && (
        <DayChoice
          action="/shelf/count"
          fields={[{ name: "day", label: "Counted at the end of", value: isoDate(day) }]}
          button="Count for this day"
          carried={asked === "left" ? {} : { lots: asked }}
        />
      )}
      {lots.length > 0 && (
        <CountForm key={`${asked} ${String(day)}`} id={newId()} day={isoDate(day)} lots={lots} send={countTheShelf} />
      )}
    </>
  );
}

const LABELS: Readonly<Record<Asked, string>> = { left: "With something left", due: "Due for a count", all: "All" };

function option(asked: Asked, day: Day, today: Day): { readonly href: Route; readonly label: string } {
  const query = new URLSearchParams({
    ...(asked === "left" ? {} : { lots: asked }),
    ...(day === today ? {} : { day: isoDate(day) }),
  }).toString();
  return { href: query === "" ? "/shelf/count" : `/shelf/count?${query}`, label: LABELS[asked] };
}

function toCount(lots: number, day: Day, today: Day): string {
  const many = `${inWordsFirst(lots)} ${lots === 1 ? "lot" : "lots"} to count`;
  const when =
    day === today ? ` today, ${longDayShown(day, today)}` : `, as they stood at the end of ${longDayShown(day, today)}`;
  return `${many}${when}. Write what the balance shows of a lot, with its vessel’s weight beside it, and how many pieces or units you find. What is left empty stays as it is.`;
}

async function lotsAsked(books: Books, today: Day, day: Day, asked: Asked): Promise<readonly CountedLot[]> {
  const stood = await readStockOn(day);
  if (asked !== "due") return lotsToCount(books.workshop, stood, day, (_, there) => asked === "all" || there > 0n);
  const due = (await countsDue(books, today)).filter(({ isDue }) => isDue);
  const materials = new Set(due.map(({ rhythm }) => rhythm.material));
  return lotsToCount(
    books.workshop,
    stood,
    day,
    ({ lot, item }, there) => lot.of === "material" && materials.has(item) && there > 0n,
  );
}
