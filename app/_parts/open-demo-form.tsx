"use client";

import { type ReactNode, useActionState } from "react";
import { openDemo } from "../actions";
import { FaultList } from "./fault-list";
import { NOT_TRIED } from "./opening-state";

/** Opens the invented workshop. */
export function OpenDemoForm({ first = false }: { readonly first?: boolean }): ReactNode {
  const [opening, open, waiting] = useActionState(openDemo, NOT_TRIED);
  return (
    <form action={open}>
      <button className={first ? "button first" : "button"} aria-disabled={waiting ? true : undefined}>
        Open the demo workshop
      </button>
      {opening.kind === "refused" && <FaultList faults={opening.faults} />}
    </form>
  );
}
