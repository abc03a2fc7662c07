"use client";

import { type ReactNode, useActionState } from "react";
import { openDemo } from "../actions";
import { FaultList } from "./fault-list";
import { NOT_TRIED } from "./opening-state";

/** Opens the invented workshop. */
export function OpenDemoForm(): ReactNode {
  const [opening, open, waiting] = useActionState(openDemo, NOT_TRIED);
  return (
    <form action={open}>
      <button className="button first" aria-disabled={waiting ? true : undefined}>
        Open the demo workshop
      </button>
      {opening.kind === "refused" && <FaultList faults={opening.faults} />}
    </form>
  );
}
