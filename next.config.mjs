// A workshop file may have 64 MiB. The server takes a little more, so that a file which is too large is refused by the
// app in a sentence, and not by the server with its connection.
const LARGEST_REQUEST = "72mb";

/** @type {import("next").NextConfig} */
const config = {
  poweredByHeader: false,
  // Every answer goes to the same machine: squeezing it would cost more than it saves.
  compress: false,
  typedRoutes: true,
  // They are a check of their own (`npm run typecheck`), in the same words: no start and no build waits for it again.
  typescript: { ignoreBuildErrors: true },
  // The framework's own button would lie over the page's.
  devIndicators: false,
  // Whoever asks gets the title with the page: streamed after it, a page has none for a moment.
  htmlLimitedBots: /.*/,
  // Native or large, and never bundled.
  serverExternalPackages: ["better-sqlite3", "@prisma/adapter-better-sqlite3", "@prisma/client", "highs"],
  experimental: {
    // A form or a page that meets a stopped app waits for it, with what was typed, rather than being lost to a fault.
    useOffline: true,
    serverActions: { bodySizeLimit: LARGEST_REQUEST },
    // The proxy keeps a copy of a request's body, 10 MB of it unless told otherwise.
    proxyClientMaxBodySize: LARGEST_REQUEST,
  },
};

export default config;
