import { Refusal } from "./refusal";

/** What a command takes: names without a value, names with one, and whether a file is named without a name before it. */
export interface Takes {
  readonly flags: readonly string[];
  readonly values: readonly string[];
  readonly file: boolean;
  /** How the command is written, told with every refusal. */
  readonly usage: string;
}

export interface Given {
  readonly flags: ReadonlySet<string>;
  readonly values: ReadonlyMap<string, string>;
  readonly file: string | null;
}

/** Takes the arguments apart. @throws Refusal at the first that the command does not take, or takes once */
export function readArguments(given: readonly string[], takes: Takes): Given {
  const flags = new Set<string>();
  const values = new Map<string, string>();
  let file: string | null = null;
  const refuse = (why: string): never => {
    throw new Refusal([`${why}. Write: ${takes.usage}`]);
  };
  for (let index = 0; index < given.length; index += 1) {
    const argument = given[index] ?? "";
    const [name = "", ...inline] = argument.split("=");
    if (flags.has(argument) || values.has(name)) refuse(`${name} is there twice`);
    else if (takes.flags.includes(argument)) flags.add(argument);
    else if (takes.values.includes(name)) {
      const value = inline.length > 0 ? inline.join("=") : given[(index += 1)];
      if (value === undefined || value === "") refuse(`${name} needs a value after it`);
      else values.set(name, value);
    } else if (argument.startsWith("-") || !takes.file) refuse(`unknown argument ${JSON.stringify(argument)}`);
    else if (file !== null) refuse("more than one file is named");
    else file = argument;
  }
  return { flags, values, file };
}
