import type { Metadata } from "next";
import { cookies } from "next/headers";
import Link from "next/link";
import type { ReactNode } from "react";
import { longDayShown } from "@/lib/edge/figures";
import { codeOf, openBatches } from "@/lib/domain/bench/batch";
import { batchAddress } from "@/lib/edge/bench-address";
import { Opening } from "./_ui/finding";
import { FirstDeed } from "./_ui/first-deed";
import { Dockets } from "./_parts/dockets";
import { FirstStart } from "./_parts/first-start";
import { HomeFinding } from "./_parts/home-finding";
import { weighedWords } from "./_parts/run-dockets";
import { TheFile } from "./_parts/the-file";
import type { Today } from "./_parts/today";
import { planForPage } from "./plan-for-page";
import { todayOf } from "./today-of";
import "./today.css";

export async function generateMetadata(): Promise<Metadata> {
  const planned = await planForPage();
  return {
    title: planned ? { absolute: `${planned.workshop.settings.name} · Stillroom` } : { absolute: "Begin · Stillroom" },
  };
}

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

/** What asks for a hand today, each with the one thing to do; before a workshop is open, the ways to begin. */
export default async function Home({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const [planned, { begin }] = await Promise.all([planForPage(), searchParams]);
  if (planned === null || begin === "afresh") return <FirstStart inPlaceOf={planned?.workshop.settings.name ?? null} />;
  const { workshop, today } = planned;
  const of = await todayOf(planned);
  const kept = (await cookies()).get("kept")?.value;
  return (
    <>
      {kept && (
        <p className="done" role="status">
          The workshop is open. The one before it was kept as {kept}, beside the store; to go back to it, stop the app
          and start it with <code>STILLROOM_STORE=data/{kept} npm start</code>; where the store lies in another folder
          than data, write that one.
        </p>
      )}
      <Opening title={longDayShown(today, today)} beside={<AtTheBench of={of} planned={planned} />}>
        <HomeFinding of={of} />
      </Opening>
      {workshop.materials.length === 0 && workshop.products.length === 0 && (
        <FirstDeed href="/book/first">Write down the first product</FirstDeed>
      )}
      {workshop.materials.length > 0 && <Dockets of={of} />}
      <TheFile workshop={workshop} />
    </>
  );
}

interface Bench {
  readonly of: Today;
  readonly planned: NonNullable<Awaited<ReturnType<typeof planForPage>>>;
}

/** The batch that is being weighed; nothing where none is. */
function AtTheBench({ of: { workshop }, planned: { desk } }: Bench): ReactNode {
  const batch = openBatches(desk.batches).at(-1);
  if (batch === undefined) return null;
  return (
    <aside className="aside" aria-label="At the bench now">
      <p>
        <b>At the bench now.</b> {workshop.products.find(({ id }) => id === batch.run.product)?.name}, batch{" "}
        <span className="whole-words">{codeOf(batch)}</span>. {weighedWords(batch)}.
      </p>
      <p>
        <Link href={batchAddress(batch.run.id)}>Carry on weighing</Link>
      </p>
    </aside>
  );
}
