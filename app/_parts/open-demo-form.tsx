"use client";

import { type ReactNode, useActionState } from "react";
import { openDemo } from "../actions";
import { FaultList } from "./fault-list";
import { NOT_TRIED, type Over } from "./opening-state";

/** Opens the invented workshop. */
export function OpenDemoForm({ over }: { readonly over: Over }): ReactNode {
  const [opening, open, waiting] = useActionState(openDemo, NOT_TRIED);
  return (
    <form action={open}>
      <input type="hidden" name="over" value={over} readOnly />
      <button className={over === "nothing" ? "button first" : "button"} aria-disabled={waiting ? true : undefined}>
        Open the demo workshop
      </button>
      {opening.kind === "refused" && <FaultList faults={opening.faults} />}
    </form>
  );
}
