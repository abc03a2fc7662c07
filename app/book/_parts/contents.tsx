import type { Route } from "next";
import Link from "next/link";
import type { ReactNode } from "react";
import { countShown } from "@/lib/edge/figures";
import { counted } from "@/lib/edge/counted";
import { newPath, sectionPath } from "./addresses";
import { SECTION_WORDS, type Section } from "./sections";

const GROUPS: readonly { readonly name: string; readonly of: string; readonly sections: readonly Section[] }[] = [
  { name: "What you make", of: "products and their formulas", sections: ["products", "formulas"] },
  { name: "What is printed", of: "labels, and their sheets", sections: ["labels", "papers"] },
  { name: "What you buy", of: "materials, from whom, at what price", sections: ["materials", "offers", "suppliers"] },
  { name: "What is here", of: "and what is coming", sections: ["lots", "orders"] },
];

type Counts = Readonly<Record<string, number>>;

/** The sections of the book, as a list of contents. */
export function Contents({
  counts,
  retired,
  drafts,
}: {
  readonly counts: Counts;
  readonly retired: Counts;
  readonly drafts: number;
}): ReactNode {
  return (
    <>
      {GROUPS.map(({ name, of, sections }) => (
        <section className="matters" key={name}>
          <h2>
            {name} <small>{of}</small>
          </h2>
          <div>
            <ul>
              {sections.map((section) => (
                <Entry
                  key={section}
                  href={sectionPath(section)}
                  title={SECTION_WORDS[section].title}
                  figure={countShown(counts[section] ?? 0)}
                  gist={SECTION_WORDS[section].gist}
                  more={moreOf(retired[section] ?? 0, section === "formulas" ? drafts : 0)}
                  add={{ href: newPath(section), label: SECTION_WORDS[section].add }}
                />
              ))}
            </ul>
          </div>
        </section>
      ))}
      <TheWorkshop />
    </>
  );
}

/** What is no list of records: what holds for all of it, what happened, and its files. */
const TheWorkshop = (): ReactNode => (
  <section className="matters">
    <h2>
      The workshop <small>what holds for all of it</small>
    </h2>
    <div>
      <ul>
        <Entry
          href="/book/rates"
          title="Rates and calendar"
          gist="An hour of your time, overhead, taxes and fees, the step of the balance, closed days, how far to plan ahead."
        />
        <Entry
          href="/book/history"
          title="History"
          gist="What was posted for each day; a posting that was entered by mistake is taken back here."
        />
        <Entry
          href="/book/stock-value"
          title="Value of stock"
          gist="What stock was worth on any day, and what was sold between two days cost."
        />
        <Entry
          href="/book/screen"
          title="Figures and keys"
          gist="Kilograms or pounds, the marks of numbers, the order of dates; single keys for those who want them."
        />
        <Entry href="/book/files" title="Files" gist="Save the workshop as a file, or open another in its place." />
      </ul>
    </div>
  </section>
);

function moreOf(retired: number, drafts: number): string {
  const parts = [
    ...(drafts > 0 ? [counted(drafts, "draft", "drafts")] : []),
    ...(retired > 0 ? [`${countShown(retired)} retired`] : []),
  ];
  return parts.join(", ");
}

function Entry({
  href,
  title,
  figure,
  gist,
  more = "",
  add,
}: {
  readonly href: Route;
  readonly title: string;
  readonly figure?: string;
  readonly gist: string;
  readonly more?: string;
  readonly add?: { readonly href: Route; readonly label: string };
}): ReactNode {
  return (
    <li className="book-entry">
      <h3>
        <Link href={href}>{title}</Link>
      </h3>
      <span className="number">
        {figure}
        {more !== "" && <small className="label">{more}</small>}
      </span>
      <p className="soft small">{gist}</p>
      {add !== undefined && (
        <Link className="more" href={add.href}>
          {add.label}
        </Link>
      )}
    </li>
  );
}
