import Link from "next/link";
import type { ReactNode } from "react";
import type { Day } from "@/lib/domain/calendar";
import type { RunInstead } from "@/lib/domain/run-instead";
import { planInsteadAddress, plannedInsteadWords, runInsteadWords } from "@/lib/edge/run-instead-words";
import { runAddress } from "@/lib/edge/run-address";
import { asSentence } from "./sentence";

/** What is made here instead of bought: what is planned of it, and a way to plan the rest. */
export function MakeIt({ instead, today }: { readonly instead: RunInstead; readonly today: Day }): ReactNode {
  const [first] = instead.planned;
  const [planned, wanted] = [plannedInsteadWords(instead, today), runInsteadWords(instead, today)];
  return (
    <>
      {first !== undefined && planned !== null && (
        <>
          <Link href={runAddress(first)}>{asSentence(planned)}</Link>
          {wanted === null ? ", which is enough once it is made." : ". "}
        </>
      )}
      {wanted !== null && (
        <>
          {planned === null ? "Make it: " : "Make more: "}
          <Link href={planInsteadAddress(instead)}>{wanted}</Link>.
        </>
      )}
    </>
  );
}
