import type { Rows, TableName } from "./tables";

/**
 * Work that gives back what it made last where it is asked of the same again. One answer is kept. For work that depends
 * on nothing but what it is given, and whose answer nobody alters.
 */
export function madeOnce<Given, Made>(work: (given: Given) => Made): (given: Given) => Made {
  let last: { readonly given: Given; readonly made: Made } | null = null;
  return (given) => {
    if (last?.given !== given) last = { given, made: work(given) };
    return last.made;
  };
}

/**
 * The same for what is made of several tables: where no row of them has changed, the very list that was made last comes
 * back, so that nothing is made twice, and who holds two states of a workshop side by side sees what is the same in both.
 * @param names  the tables that the work looks at; the compiler holds it to them
 */
export function madeOfTables<Name extends TableName, Made>(
  names: readonly Name[],
  work: (rows: Pick<Rows, Name>) => Made,
): (rows: Pick<Rows, Name>) => Made {
  let last: { readonly rows: readonly Rows[Name][]; readonly made: Made } | null = null;
  return (rows) => {
    const isSame = last !== null && names.every((name, at) => rows[name] === last?.rows[at]);
    if (last === null || !isSame) last = { rows: names.map((name) => rows[name]), made: work(rows) };
    return last.made;
  };
}
