import Link from "next/link";
import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import { type Books, RETIRABLE } from "@/lib/domain/desk";
import { usageOf } from "@/lib/domain/usage-of";
import { remove, retireOrBringBack } from "@/app/book/[section]/[id]/actions";
import { newPath } from "./addresses";
import { DeedForm } from "./deed-form";
import { UsedBy } from "./record-finding";
import { SECTION_WORDS, type Section } from "./sections";

/** What can be done with a record besides changing it: copy it, retire it, remove it where nothing uses it. */
export function AlsoWithIt({
  books,
  section,
  id,
  seen,
  today,
}: {
  readonly today: Day;
  readonly books: Books;
  readonly section: Section;
  readonly id: string;
  readonly seen: string;
}): ReactNode {
  const list = RETIRABLE.find((retirable) => retirable === section);
  const isRetired = list !== undefined && books.desk.retired[list].includes(id);
  const usages = list === undefined ? [] : usageOf(books, list, id);
  const { one } = SECTION_WORDS[section];
  return (
    <section className="matters" aria-labelledby="also">
      <h2 id="also">
        Also <small>with this {one}</small>
      </h2>
      <div className="also">
        <UsedBy usages={usages} workshop={books.workshop} today={today} />
        <div className="deeds">
          <Link className="button" href={newPath(section, { copy: id })}>
            Copy it
          </Link>
          {list !== undefined && (
            <DeedForm
              key={String(isRetired)}
              act={retireOrBringBack.bind(null, section, id, isRetired ? "bring back" : "retire")}
              label={isRetired ? "Bring it back" : "Retire it"}
            />
          )}
          {usages.length === 0 && <DeedForm act={remove.bind(null, section, id, seen)} label={`Remove the ${one}`} />}
        </div>
        {list !== undefined && !isRetired && (
          <p className="label">Retiring hides it from new work and changes no figure. It can be brought back.</p>
        )}
      </div>
    </section>
  );
}
