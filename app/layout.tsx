import type { Metadata } from "next";
import { cookies } from "next/headers";
import Link from "next/link";
import type { ReactNode } from "react";
import { isoDate } from "@/lib/domain/calendar";
import { dayShown } from "@/lib/edge/figures";
import "./_css/fonts.css";
import "./_css/tokens.css";
import "./_css/ground.css";
import "./_css/head.css";
import "./_css/controls.css";
import "./_css/ledger.css";
import "./_css/cost.css";
import "./_css/start.css";
import { Away } from "./_parts/away";
import { SetDay } from "./_parts/set-day";
import { Mark } from "./_ui/mark";
import { type Place, Places } from "./_ui/places";
import { ScriptsReady } from "./_ui/scripts-ready";
import { SingleKeys } from "./_ui/single-keys";
import { switchScheme } from "./actions";
import { readOnce } from "./plan-for-page";

export const metadata: Metadata = {
  title: { default: "Stillroom", template: "%s · Stillroom" },
  description: "What a jar costs, what the shelf can make, what runs short and by which day to order.",
};

/** Only the places that are built: the others are absent, not faked. */
const PLACES: readonly Place[] = [
  { href: "/", name: "Today" },
  { href: "/cost", name: "Cost" },
  { href: "/week", name: "Week" },
  { href: "/shelf", name: "Shelf" },
  { href: "/buying", name: "Buying" },
  { href: "/bench", name: "Bench" },
  { href: "/book", name: "Book" },
];

export default async function Layout({ children }: { readonly children: ReactNode }): Promise<ReactNode> {
  const books = await readOnce();
  const workshop = books?.workshop;
  const jar = await cookies();
  const scheme = jar.get("scheme")?.value;
  const { name, today = null } = workshop?.settings ?? {};
  return (
    <html
      lang="en-GB"
      data-scheme={scheme === "dark" || scheme === "light" ? scheme : undefined}
      data-locale={books?.desk.notation.locale}
      data-units={books?.desk.notation.units}
    >
      <body data-workshop={name}>
        <a className="skip" href="#main">
          Skip to the page
        </a>
        <div className="page">
          <header>
            <div className="head">
              <Link className="mark" href="/">
                <Mark />
                Stillroom
              </Link>
              {workshop && <Places places={PLACES} />}
              <div className="head-end">
                {name && (
                  <span className="workshop-name" title={name}>
                    {name}
                  </span>
                )}
                {workshop && (
                  <Link className="button plain" href="/find">
                    Find
                  </Link>
                )}
                <form action={switchScheme}>
                  <button className="button plain to-dark" name="scheme" value="dark">
                    Dark page
                  </button>
                  <button className="button plain to-light" name="scheme" value="light">
                    Light page
                  </button>
                </form>
              </div>
            </div>
            {today !== null && <SetDay day={dayShown(today, today, { year: true })} iso={isoDate(today)} />}
          </header>
          <Away />
          <main id="main">{children}</main>
        </div>
        {workshop && jar.get("keys")?.value === "on" && <SingleKeys />}
        <ScriptsReady />
      </body>
    </html>
  );
}
