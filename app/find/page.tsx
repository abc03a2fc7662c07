import type { Metadata, Route } from "next";
import Link from "next/link";
import { redirect } from "next/navigation";
import type { ReactNode } from "react";
import { Opening } from "@/app/_ui/finding";
import { readOnce } from "@/app/plan-for-page";
import { inWords } from "@/lib/edge/counted";
import { find, type Findable, findables, type FoundOfKind } from "@/lib/edge/find";
import { nearSpelling } from "@/lib/edge/near-spelling";
import { realToday } from "@/lib/edge/real-today";
import { FindField } from "./_parts/find-field";
import "./find.css";

export const metadata: Metadata = { title: "Find" };

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

/** Of each kind so many are shown, and of one kind that was asked for all. */
const MOST_OF_A_KIND = 8;
const MOST_TYPED = 200;

/** Anything that the workshop names, found by typing: a form that asks by its address, so that it needs no script. */
export default async function FindPage({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const [books, asked] = await Promise.all([readOnce(), searchParams]);
  if (books === null) redirect("/");
  const typed = (typeof asked.q === "string" ? asked.q : "").slice(0, MOST_TYPED);
  const all = findables(books, books.workshop.settings.today ?? realToday());
  const kind = typeof asked.kind === "string" ? asked.kind : null;
  const among = kind === null ? all : all.filter((each) => each.kind === kind);
  const { found, meant } = foundOrMeant(among, typed, kind === null ? MOST_OF_A_KIND : Infinity);
  return (
    <>
      <Opening title="Find">
        <Says typed={typed} meant={meant} found={found} />
      </Opening>
      <FindField typed={typed} most={MOST_TYPED}>
        {found.map((each) => (
          <Kind key={each.kind} of={each} typed={meant ?? typed} />
        ))}
      </FindField>
    </>
  );
}

interface Found {
  readonly found: readonly FoundOfKind[];
  /** What it was taken for, where nothing is called what was typed. */
  readonly meant: string | null;
}

function foundOrMeant(all: readonly Findable[], typed: string, most: number): Found {
  const found = find(all, typed, most);
  const meant = found.length > 0 ? null : nearSpelling(all, typed);
  return meant === null ? { found, meant } : { found: find(all, meant, most), meant };
}

function Says({ typed, meant, found }: Found & { readonly typed: string }): ReactNode {
  if (typed.trim() === "")
    return "A material or what it is made of, a lot, a formula, a trial, a product, a batch, an order: part of its name is enough.";
  const count = found.reduce((sum, each) => sum + each.found.length + each.further, 0);
  if (count === 0) return `Nothing here is called “${typed.trim()}”. Try fewer letters, or another word of the name.`;
  const places = count === 1 ? "One place" : `${inWords(count).replace(/^./, (first) => first.toUpperCase())} places`;
  if (meant === null)
    return (
      <>
        <b>{places}</b> for “{typed.trim()}”.
      </>
    );
  return (
    <>
      Nothing here is called “{typed.trim()}”. <b>{places}</b> for “{meant}”, which is like it.
    </>
  );
}

function Kind({
  of: { kind, found, further },
  typed,
}: {
  readonly of: FoundOfKind;
  readonly typed: string;
}): ReactNode {
  return (
    <section className="found">
      <h2>{kind}</h2>
      <ul>
        {found.map(({ name, says, href }) => (
          <li key={href}>
            <Link href={href as Route} prefetch={false}>
              <b>{name}</b>
              <span>{says}</span>
            </Link>
          </li>
        ))}
        {further > 0 && (
          <li>
            <Link href={`/find?${new URLSearchParams({ q: typed, kind }).toString()}`} prefetch={false}>
              <b>{further} more</b>
            </Link>
          </li>
        )}
      </ul>
    </section>
  );
}
