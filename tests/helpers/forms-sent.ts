/** Forms sent to their actions as a browser sends them, and what was answered, in short. */
import type { AskingAnswer } from "@/app/_ui/asking-answer";
import type { FormAnswer } from "@/app/_ui/form-answer";

export type Typed = Readonly<Record<string, string>>;
type Answer = AskingAnswer | FormAnswer;
export type Act = (form: FormData) => Promise<Answer>;

export interface Answered {
  /**
   * `amount: must be above zero` for a fault at its field, what is about the whole alone, several apart by ` | `;
   * `goes on to /shelf` where the form was done.
   */
  readonly says: string;
  /** The fields that the answer does not hold as they were typed. What a form carries hidden is drawn anew. */
  readonly lost: readonly string[];
}

class GoneOn extends Error {}

/** In the place of Next's own `redirect`, which only a page can answer. */
export function goOn(to: string): never {
  throw new GoneOn(to);
}

export async function answered(act: Act, typed: Typed): Promise<Answered> {
  const form = new FormData();
  for (const [name, value] of Object.entries(typed)) form.append(name, value);
  try {
    const answer = await act(form);
    const kept = answer.kind === "refused" ? ("typed" in answer ? answer.typed : answer.values) : typed;
    const lost = Object.keys(typed).filter((name) => !isCarried(name) && kept[name] !== typed[name]);
    return { says: inShort(answer), lost };
  } catch (fault) {
    if (fault instanceof GoneOn) return { says: `goes on to ${fault.message}`, lost: [] };
    throw fault;
  }
}

const CARRIED = ["key", "id", "lot", "posting", "run", "from", "units", "deed", "of", "stood", "hours"];
const isCarried = (name: string): boolean =>
  CARRIED.includes(name) || name.startsWith("measure ") || name === "product";

function inShort(answer: Answer): string {
  if (answer.kind !== "refused") return answer.kind;
  const faults =
    "says" in answer
      ? [answer.says, ...Object.entries(answer.faults).map(([name, said]) => `${name}: ${said ?? ""}`)]
      : answer.faults.map(({ name, message }) => (name === null ? message : `${name}: ${message}`));
  return faults.filter((fault) => fault !== null).join(" | ");
}
