import type { ReactNode } from "react";

const SAYS: ReadonlyMap<string, { readonly words: string; readonly isRefusal: boolean }> = new Map([
  ["made", { words: "Made. The run left the plan, and what it drew left the shelf.", isRefusal: false }],
  [
    "made meanwhile",
    {
      words:
        "This run was closed as made meanwhile, in another tab, and stands as below. Nothing of what you sent was kept.",
      isRefusal: true,
    },
  ],
  [
    "taken back",
    {
      words:
        "Taken back. What was drawn is on the shelf again, and the run is planned as it was. Both postings stay in the history.",
      isRefusal: false,
    },
  ],
]);

/** What was done to this run last, as the address says it. */
export function MakeNotice({ did }: { readonly did: string }): ReactNode {
  const said = SAYS.get(did);
  return (
    <div role="status">
      {said && <p className={said.isRefusal ? "fault week-notice" : "done week-notice"}>{said.words}</p>}
    </div>
  );
}
