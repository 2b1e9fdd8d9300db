import type { NextConfig } from 'next';

// The content security policy is another for each request: see proxy.ts.
const headers = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  { key: 'Permissions-Policy', value: 'camera=(), geolocation=(), microphone=()' },
  { key: 'Cross-Origin-Opener-Policy', value: 'same-origin' },
  { key: 'Cross-Origin-Resource-Policy', value: 'same-origin' },
];

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  // The type check is a step of its own (npm run check, npm test): a build need not repeat it.
  typescript: { ignoreBuildErrors: true },
  // Native binding, and the query compiler that is loaded beside it: both stay outside the bundle.
  serverExternalPackages: ['better-sqlite3', '@prisma/client', '@prisma/adapter-better-sqlite3', 'pino', 'prom-client'],
  // A photo passes through the proxy whole: see PHOTO_LIMITS in shared/schemas/photo.ts.
  experimental: { proxyClientMaxBodySize: '16mb' },
  // Title and description stand in the head for everybody: they cost nothing to wait for, and a page is the same whoever asks.
  htmlLimitedBots: /.*/,
  turbopack: { root: import.meta.dirname },
  // Where programs that watch a site look by custom.
  rewrites: async () => [
    { source: '/healthz', destination: '/api/alive' },
    { source: '/readyz', destination: '/api/ready' },
    { source: '/metrics', destination: '/api/metrics' },
    // Open data and feeds stand where what they are of stands.
    { source: '/data/:file', destination: '/api/data/:file' },
    { source: '/cases/feed.atom', destination: '/api/feeds/cases/all' },
    { source: '/symptoms/:slug/feed.atom', destination: '/api/feeds/symptoms/:slug' },
    { source: '/devices/:slug/feed.atom', destination: '/api/feeds/devices/:slug' },
  ],
  headers: async () => [{ source: '/:path*', headers }],
};

export default config;
