import type { NextConfig } from 'next';

const headers = [
  { key: 'X-Content-Type-Options', value: 'nosniff' },
  { key: 'Referrer-Policy', value: 'same-origin' },
  // Scripts are not restricted here: that takes a nonce per request. Everything that needs none is.
  {
    key: 'Content-Security-Policy',
    value: "frame-ancestors 'none'; base-uri 'self'; form-action 'self'; object-src 'none'",
  },
  { key: 'Permissions-Policy', value: 'camera=(), geolocation=(), microphone=()' },
];

const config: NextConfig = {
  poweredByHeader: false,
  reactStrictMode: true,
  // The type check is a step of its own (npm run check, npm test): a build need not repeat it.
  typescript: { ignoreBuildErrors: true },
  // Native binding, and the query compiler that is loaded beside it: both stay outside the bundle.
  serverExternalPackages: ['better-sqlite3', '@prisma/client', '@prisma/adapter-better-sqlite3'],
  turbopack: { root: import.meta.dirname },
  headers: async () => [{ source: '/:path*', headers }],
};

export default config;
