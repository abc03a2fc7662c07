import type { Metadata } from "next";
import { cookies } from "next/headers";
import type { ReactNode } from "react";
import { longDayShown } from "@/lib/edge/figures";
import { Opening } from "./_ui/finding";
import { FirstStart } from "./_parts/first-start";
import { HomeFinding } from "./_parts/home-finding";
import { MattersList } from "./_parts/matters";
import { TheFile } from "./_parts/the-file";
import { whatMatters } from "./_parts/what-matters";
import { planForPage } from "./plan-for-page";

export async function generateMetadata(): Promise<Metadata> {
  const planned = await planForPage();
  return {
    title: planned ? { absolute: `${planned.workshop.settings.name} · Stillroom` } : { absolute: "Begin · Stillroom" },
  };
}

/** What there is in the workshop and what asks for a hand; before one is open, the ways to begin. */
export default async function Home(): Promise<ReactNode> {
  const planned = await planForPage();
  if (planned === null) return <FirstStart />;
  const { workshop, today, plan } = planned;
  const matters = whatMatters(plan);
  const kept = (await cookies()).get("kept")?.value;
  return (
    <>
      {kept && (
        <p className="done" role="status">
          The workshop is open. The one before it was kept as {kept}, beside the store.
        </p>
      )}
      <Opening title={longDayShown(today, today)}>
        <HomeFinding matters={matters} products={workshop.products.length} today={today} />
      </Opening>
      <MattersList matters={matters} today={today} />
      <TheFile workshop={workshop} />
    </>
  );
}
