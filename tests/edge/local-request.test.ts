import { describe, expect, test } from "vitest";
import { admission, contentPolicy, type Request, UPLOAD_LIMIT_BYTES } from "@/lib/edge/local-request";

const asked = (said: Partial<Request>): Request => ({
  method: "GET",
  host: "127.0.0.1:3000",
  origin: null,
  site: null,
  contentLength: null,
  ...said,
});
const answer = (said: Partial<Request>, port: string | null = "3000"): number => {
  const result = admission(asked(said), port);
  return result.kind === "admitted" ? 200 : result.status;
};

// DNS rebinding and cross-site requests: OWASP Cross-Site Request Forgery Prevention Cheat Sheet, "Verifying Origin
// With Standard Headers" (from memory).
describe("who is answered", () => {
  test.each([
    { host: "127.0.0.1:3000", status: 200 },
    { host: "localhost:3000", status: 200 },
    { host: "LOCALHOST:3000", status: 200 },
    { host: "[::1]:3000", status: 200 },
    { host: "127.0.0.1:3001", status: 421 },
    { host: "127.0.0.1", status: 421 },
    { host: "stillroom.example:3000", status: 421 },
    { host: "127.0.0.1.example:3000", status: 421 },
    { host: "localhost:3000@stillroom.example", status: 421 },
    { host: "192.168.0.4:3000", status: 421 },
    { host: "", status: 421 },
    { host: null, status: 421 },
  ])("Host $host: $status", ({ host, status }) => {
    expect(answer({ host })).toBe(status);
  });

  test("without a port the host alone decides", () => {
    expect(answer({ host: "127.0.0.1:4000" }, null)).toBe(200);
    expect(answer({ host: "stillroom.example" }, null)).toBe(421);
  });

  test.each([
    { origin: "http://127.0.0.1:3000", site: "same-origin", status: 200 },
    { origin: null, site: null, status: 200 },
    { origin: "http://localhost:3000", site: null, status: 403 },
    { origin: "http://127.0.0.1:4000", site: "same-site", status: 403 },
    { origin: "https://127.0.0.1:3000", site: null, status: 403 },
    { origin: "http://stillroom.example", site: "cross-site", status: 403 },
    { origin: "null", site: null, status: 403 },
    { origin: null, site: "cross-site", status: 403 },
  ])("a form from $origin ($site): $status", ({ origin, site, status }) => {
    expect(answer({ method: "POST", contentLength: "10", origin, site })).toBe(status);
  });

  test("a page may be read from a link of another site, which cannot see it", () => {
    expect(answer({ origin: "http://stillroom.example", site: "cross-site" })).toBe(200);
  });
});

describe("how much is taken", () => {
  test.each([
    { contentLength: String(UPLOAD_LIMIT_BYTES), status: 200 },
    { contentLength: String(UPLOAD_LIMIT_BYTES + 70_000), status: 413 },
    { contentLength: "999999999999999999", status: 411 },
    { contentLength: "-1", status: 411 },
    { contentLength: null, status: 411 },
  ])("$contentLength bytes: $status", ({ contentLength, status }) => {
    expect(answer({ method: "POST", contentLength })).toBe(status);
  });
});

describe("the content policy", () => {
  test("allows nothing inline without the nonce, and eval only while developing", () => {
    const policy = contentPolicy("abc", false);
    expect(policy).toContain("script-src 'self' 'nonce-abc' 'strict-dynamic';");
    expect(policy).toContain("style-src 'self' 'nonce-abc';");
    expect(policy).not.toMatch(/unsafe|https?:|\*/);
    expect(contentPolicy("abc", true)).toContain("'unsafe-eval'");
  });
});
