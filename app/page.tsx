import type { Metadata } from "next";
import { cookies } from "next/headers";
import type { ReactNode } from "react";
import { longDayShown } from "@/lib/edge/figures";
import { Opening } from "./_ui/finding";
import { FirstStart } from "./_parts/first-start";
import { HomeFinding } from "./_parts/home-finding";
import { MattersList } from "./_parts/matters";
import { TheFile } from "./_parts/the-file";
import { countMatters, whatMatters } from "./_parts/what-matters";
import { countsDue } from "./counts-due-for-page";
import { planForPage } from "./plan-for-page";

export async function generateMetadata(): Promise<Metadata> {
  const planned = await planForPage();
  return {
    title: planned ? { absolute: `${planned.workshop.settings.name} · Stillroom` } : { absolute: "Begin · Stillroom" },
  };
}

type Search = Promise<Readonly<Record<string, string | readonly string[] | undefined>>>;

/** What there is in the workshop and what asks for a hand; before one is open, the ways to begin. */
export default async function Home({ searchParams }: { readonly searchParams: Search }): Promise<ReactNode> {
  const [planned, { begin }] = await Promise.all([planForPage(), searchParams]);
  if (planned === null || begin === "afresh") return <FirstStart inPlaceOf={planned?.workshop.settings.name ?? null} />;
  const { workshop, today, plan } = planned;
  const matters = whatMatters(plan, workshop);
  const toCount = (await countsDue(planned, today)).filter(({ isDue }) => isDue);
  const kept = (await cookies()).get("kept")?.value;
  return (
    <>
      {kept && (
        <p className="done" role="status">
          The workshop is open. The one before it was kept as {kept}, beside the store; to go back to it, stop the app
          and start it with <code>STILLROOM_STORE</code> set to that file.
        </p>
      )}
      <Opening title={longDayShown(today, today)}>
        <HomeFinding matters={matters} products={workshop.products.length} today={today} />
      </Opening>
      <MattersList matters={matters} toCount={countMatters(toCount, workshop.materials)} today={today} />
      <TheFile workshop={workshop} />
    </>
  );
}
