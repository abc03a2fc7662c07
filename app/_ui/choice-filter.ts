/** What can be chosen, and which of it is meant by what is typed. */
import { holdsAll, plainWords } from "@/lib/edge/plain-words";

export interface Choice {
  readonly value: string;
  readonly label: string;
  /** What tells it from another of the same name. */
  readonly detail?: string | undefined;
}

export interface ChoiceGroup {
  readonly name: string | null;
  readonly options: readonly Choice[];
}

/** `Castor oil (ingredient, Hollin Wharf)`. */
export const choiceWords = ({ label, detail }: Choice): string =>
  detail === undefined ? label : `${label} (${detail})`;

/** So many are drawn at once; of the others it is said that they are there. */
const MOST_DRAWN = 200;

export interface Matching {
  readonly groups: readonly ChoiceGroup[];
  /** How many match and are not among them. */
  readonly further: number;
}

/** Those whose words hold everything that is typed, each word of it anywhere; everything where nothing is typed. */
export function matching(groups: readonly ChoiceGroup[], typed: string): Matching {
  const words = plainWords(typed).split(" ");
  let [room, further] = [MOST_DRAWN, 0];
  const matched = groups.map(({ name, options }) => {
    const found = options.filter((option) => holdsAll(plainWords(choiceWords(option)), words));
    const drawn = found.slice(0, room);
    room -= drawn.length;
    further += found.length - drawn.length;
    return { name, options: drawn };
  });
  return { groups: matched.filter(({ options }) => options.length > 0), further };
}

/** The one that is called so, or null where none or several are. */
export function calledSo(groups: readonly ChoiceGroup[], typed: string): Choice | null {
  const name = plainWords(typed);
  const called = groups
    .flatMap(({ options }) => options)
    .filter((option) => [option.label, choiceWords(option)].some((words) => plainWords(words) === name));
  return onlyOne(called);
}

/** The one that what is typed can only mean: called so, or alone in holding it. */
export function meantBy(groups: readonly ChoiceGroup[], typed: string): Choice | null {
  if (plainWords(typed) === "") return null;
  const { groups: found, further } = matching(groups, typed);
  const alone = further === 0 ? onlyOne(found.flatMap(({ options }) => options)) : null;
  return calledSo(groups, typed) ?? alone;
}

function onlyOne(choices: readonly Choice[]): Choice | null {
  const [first, ...others] = choices;
  return first !== undefined && others.length === 0 ? first : null;
}
