import type { Metadata } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { AskingForm } from "@/app/_ui/asking-form";
import { Opening } from "@/app/_ui/finding";
import { Ledger } from "@/app/_ui/ledger";
import { Sign } from "@/app/_ui/sign";
import { countsDue } from "@/app/counts-due-for-page";
import { readOnce } from "@/app/plan-for-page";
import type { Day } from "@/lib/domain/calendar";
import { type CountDue, type Rhythm, rhythmOf } from "@/lib/domain/ledger/counts-due";
import type { Material } from "@/lib/domain/workshop";
import { counted, inWordsFirst } from "@/lib/edge/counted";
import { dayShown } from "@/lib/edge/figures";
import { rhythmCarried } from "@/lib/edge/forms/count-rhythm-form";
import { realToday } from "@/lib/edge/real-today";
import { rhythmInWords, sinceInWords } from "../../_parts/count-due-words";
import { ShelfCrumb } from "../../_parts/shelf-crumb";
import { keepRhythm } from "./actions";
import "../../shelf.css";

export const metadata: Metadata = { title: "When to count" };

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

/** How often each material is counted, and which fall due. @rule LEDGER-25 */
export default async function CountDuePage({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const [books, { set }] = await Promise.all([readOnce(), searchParams]);
  if (!books) redirect("/");
  const { workshop, desk } = books;
  const today = workshop.settings.today ?? realToday();
  const all = await countsDue(books, today);
  const asked = workshop.materials.find(({ id }) => id === set);
  return (
    <>
      <Opening crumb={<ShelfCrumb />} title="When to count">
        <Answer all={all} />
      </Opening>
      {asked && <RhythmForm material={asked} rhythm={rhythmOf(desk.countRhythms, asked.id)} />}
      <RhythmsByNeed materials={workshop.materials} all={all} today={today} />
      <p className="small soft">
        A material falls due so many days after it was last counted, or once so many runs have drawn of it, whichever
        comes first. How often is the maker’s to say; it is kept in the app and not in a workshop file.
      </p>
    </>
  );
}

function Answer({ all }: { readonly all: readonly CountDue[] }): ReactNode {
  if (all.length === 0) return "No material is counted by a rhythm yet. Say of one how often it should be.";
  const due = all.filter(({ isDue }) => isDue).length;
  if (due === 0)
    return `Nothing is due for a count: ${counted(all.length, "material is", "materials are")} looked after.`;
  return (
    <>
      {inWordsFirst(due)} of {counted(all.length, "material", "materials")} {due === 1 ? "is" : "are"} due for a count.{" "}
      <Link href="/shelf/count?lots=due">Count what is due</Link>
    </>
  );
}

const RhythmForm = ({
  material: { id, name },
  rhythm,
}: {
  readonly material: Material;
  readonly rhythm: Rhythm;
}): ReactNode => (
  <section className="count-rhythm" aria-labelledby="count-rhythm-title">
    <h2 id="count-rhythm-title">How often {name} is counted</h2>
    <AskingForm
      key={`${id} ${rhythmCarried(rhythm)}`}
      act={keepRhythm}
      carried={{ material: id }}
      kept={{ from: rhythmCarried(rhythm) }}
      takesFocus
      fields={[
        {
          name: "days",
          label: "After so many days",
          type: "text",
          value: String(rhythm?.days ?? ""),
          hint: "As 30. Leave it empty where days do not matter.",
        },
        {
          name: "draws",
          label: "After so many runs",
          type: "text",
          value: String(rhythm?.draws ?? ""),
          hint: "Runs that drew of it since. Leave both empty not to be told.",
        },
      ]}
      button="Keep how often"
    />
  </section>
);

interface Listed {
  readonly materials: readonly Material[];
  readonly all: readonly CountDue[];
  readonly today: Day;
}

/** Those that are counted by a rhythm; the others are folded, unless there are no others. */
function RhythmsByNeed({ materials, all, today }: Listed): ReactNode {
  const looked = new Set(all.map(({ rhythm }) => rhythm.material));
  const [having, without] = [
    materials.filter(({ id }) => looked.has(id)),
    materials.filter(({ id }) => !looked.has(id)),
  ];
  return (
    <>
      {having.length > 0 && <Rhythms materials={having} all={all} today={today} />}
      {without.length > 0 && (
        <details className="as-table" open={having.length === 0}>
          <summary>{inWordsFirst(without.length)} without a rhythm</summary>
          <Rhythms materials={without} all={[]} today={today} />
        </details>
      )}
    </>
  );
}

function Rhythms({ materials, all, today }: Listed): ReactNode {
  const dueOf = new Map(all.map((due) => [due.rhythm.material, due]));
  return (
    <Ledger
      caption={
        all.length > 0 ? "Materials and how often each is counted" : "Materials that are not counted by a rhythm"
      }
      columns={[{ name: "Material" }, ...(all.length > 0 ? [{ name: "How often" }, { name: "Due" }] : [])]}
    >
      {materials.map(({ id, name }) => {
        const due = dueOf.get(id);
        return (
          <tr key={id}>
            <th scope="row">
              <Link href={{ pathname: "/shelf/count/due", query: { set: id } }} prefetch={false}>
                {name}
              </Link>
              {due && <small>{sinceInWords(due, today)}</small>}
            </th>
            {due && (
              <>
                <td>{rhythmInWords(due.rhythm)}</td>
                <td>
                  <DueSign due={due} today={today} />
                </td>
              </>
            )}
          </tr>
        );
      })}
    </Ledger>
  );
}

function DueSign({ due: { isDue, dueOn }, today }: { readonly due: CountDue; readonly today: Day }): ReactNode {
  if (isDue)
    return (
      <Sign sign="tally" tone="open">
        count due
      </Sign>
    );
  return (
    <Sign sign="dash" tone="still">
      {dueOn === null ? "by runs" : dayShown(dueOn, today)}
    </Sign>
  );
}
