/** Forms of a page as a browser without scripts has them: read from the markup, filled in, and sent. */

export interface PageForm {
  /** The path that it was read from, and is sent to. */
  readonly path: string;
  /** What it carries as it was drawn, by name. */
  readonly fields: ReadonlyMap<string, string>;
}

const PATIENCE_MS = 60_000;

/**
 * A connection for each question. A server drops one that was kept a while, and may do so just as it is used again: then
 * nobody knows whether what was sent came in, and no kill is needed for it.
 */
const NOT_KEPT = { Connection: "close" };

/** Loads a page and reads the one form on it that has this field. @throws where no form has it */
export async function formOn(url: string, path: string, field: string): Promise<PageForm> {
  const answer = await fetch(url + path, { headers: NOT_KEPT, signal: AbortSignal.timeout(PATIENCE_MS) });
  const markup = await answer.text();
  const forms = [...markup.matchAll(/<form\b[^>]*>(.*?)<\/form>/gs)].map(([, body = ""]) => fieldsIn(body));
  const fields = forms.find((each) => each.has(field));
  if (!fields) throw new Error(`${path} answered ${String(answer.status)} and has no form with a field ${field}`);
  return { path, fields };
}

/** Hidden and typed fields and choices. A button is no field: the sender says which one was pressed. */
function fieldsIn(body: string): ReadonlyMap<string, string> {
  const fields = new Map<string, string>();
  for (const [tag] of body.matchAll(/<input\b[^>]*>/g)) fields.set(attribute(tag, "name"), attribute(tag, "value"));
  for (const [, opening = "", options = ""] of body.matchAll(/<select\b([^>]*)>(.*?)<\/select>/gs)) {
    const chosen = /<option\b[^>]*\bselected\b[^>]*>/.exec(options) ?? /<option\b[^>]*>/.exec(options) ?? [""];
    fields.set(attribute(opening, "name"), attribute(chosen[0], "value"));
  }
  return fields;
}

const attribute = (tag: string, name: string): string =>
  unescaped(new RegExp(`\\s${name}="([^"]*)"`).exec(tag)?.[1] ?? "");

const ENTITIES: Readonly<Record<string, string>> = { amp: "&", quot: '"', lt: "<", gt: ">", "#x27": "'", "#39": "'" };

const unescaped = (text: string): string =>
  text.replaceAll(/&(#?\w+);/g, (whole, name: string) => ENTITIES[name] ?? whole);

/** Sends the form with these fields filled in. @returns where the answer leads on to, or null where it leads nowhere */
export async function send(
  url: string,
  { path, fields }: PageForm,
  typed: Readonly<Record<string, string>>,
): Promise<string | null> {
  const body = new FormData();
  for (const [name, value] of new Map([...fields, ...Object.entries(typed)])) body.append(name, value);
  // Encoded first: the app wants to be told how long a form is.
  const encoded = new Response(body);
  const answer = await fetch(url + path, {
    method: "POST",
    body: await encoded.arrayBuffer(),
    headers: { "Content-Type": encoded.headers.get("Content-Type") ?? "", Origin: url, ...NOT_KEPT },
    redirect: "manual",
    signal: AbortSignal.timeout(PATIENCE_MS),
  });
  await answer.arrayBuffer();
  if (answer.status >= 400) throw new Error(`${path} answered ${String(answer.status)}`);
  return answer.status === 303 ? answer.headers.get("Location") : null;
}
