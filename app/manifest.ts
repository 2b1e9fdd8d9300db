import type { MetadataRoute } from 'next';

/** Makes the site installable: the bench opens as an app of its own. */
export default function manifest(): MetadataRoute.Manifest {
  return {
    name: 'Second Bench',
    short_name: 'Second Bench',
    description: 'A shared casebook for people who repair vintage consoles, home computers and the monitors around them.',
    id: '/bench',
    start_url: '/bench',
    scope: '/',
    display: 'standalone',
    background_color: '#f7f3ea',
    theme_color: '#f7f3ea',
    icons: [{ src: '/icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
  };
}
