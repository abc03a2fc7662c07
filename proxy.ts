/** Stands before every page: refuses strangers and gives each answer its content policy. */
import { type NextRequest, NextResponse } from "next/server";
import { admission, ANSWER_HEADERS, contentPolicy } from "@/lib/edge/local-request";

export function proxy(request: NextRequest): NextResponse {
  const { headers, method } = request;
  const result = admission(
    {
      method,
      host: headers.get("host"),
      origin: headers.get("origin"),
      site: headers.get("sec-fetch-site"),
      contentLength: headers.get("content-length"),
    },
    process.env.PORT ?? null,
  );
  const nonce = Buffer.from(crypto.getRandomValues(new Uint8Array(18))).toString("base64");
  const policy = contentPolicy(nonce, process.env.NODE_ENV === "development");

  if (!isReadable(request.nextUrl.pathname)) {
    const answer = new NextResponse("There is no page at this address.\n", {
      status: 404,
      headers: { "Content-Type": "text/plain; charset=utf-8", "Cache-Control": "no-store" },
    });
    return withHeaders(answer, policy);
  }
  if (result.kind === "refused") {
    const answer = new NextResponse(`${result.sentence}\n`, {
      status: result.status,
      headers: { "Content-Type": "text/plain; charset=utf-8", "Cache-Control": "no-store" },
    });
    return withHeaders(answer, policy);
  }
  // Next reads the nonce from the policy of the request and puts it on its own scripts.
  const passedOn = new Headers(headers);
  passedOn.set("Content-Security-Policy", policy);
  return withHeaders(NextResponse.next({ request: { headers: passedOn } }), policy);
}

/** An address with a percent sign that stands for no letter would fail further on. */
function isReadable(path: string): boolean {
  try {
    decodeURIComponent(path);
    return true;
  } catch {
    return false;
  }
}

function withHeaders(answer: NextResponse, policy: string): NextResponse {
  answer.headers.set("Content-Security-Policy", policy);
  for (const [name, value] of ANSWER_HEADERS) answer.headers.set(name, value);
  return answer;
}
