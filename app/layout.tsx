import type { Metadata, Viewport } from 'next';
import type { ReactNode } from 'react';
import '@fontsource/atkinson-hyperlegible-next/latin-400.css';
import '@fontsource/atkinson-hyperlegible-next/latin-400-italic.css';
import '@fontsource/atkinson-hyperlegible-next/latin-700.css';
import '@fontsource/atkinson-hyperlegible-next/latin-ext-400.css';
import '@fontsource/atkinson-hyperlegible-next/latin-ext-700.css';
import '@fontsource/atkinson-hyperlegible-mono/latin-400.css';
import '@fontsource/atkinson-hyperlegible-mono/latin-700.css';
import './_styles/tokens.css';
import './_styles/base.css';
import './_styles/shell.css';
import './_styles/figures.css';
import './_styles/ask.css';
import './_styles/tags.css';
import './_styles/causes.css';
import './_styles/ladder.css';
import './_styles/casebook.css';
import './_styles/plan.css';
import './_styles/account.css';
import './_styles/print.css';
import { isAtLeast } from '../shared/domain/can/role';
import { FigureDefs } from './_components/figure-defs';
import { SiteFooter } from './_components/site-footer';
import { SiteHeader } from './_components/site-header';
import { attempt } from './_casebook/attempt';
import { isDemo } from './_casebook/is-demo';
import { serverCaller } from './_trpc/server';

/** Every page shows the casebook as it is now: none is written ahead when the program is built. */
export const dynamic = 'force-dynamic';

export const metadata: Metadata = {
  ...(process.env.SITE_URL ? { metadataBase: new URL(process.env.SITE_URL) } : {}),
  title: { default: 'Second Bench', template: '%s · Second Bench' },
  description: 'A shared casebook for people who repair vintage consoles, home computers and the monitors around them.',
};

export const viewport: Viewport = {
  width: 'device-width',
  initialScale: 1,
  colorScheme: 'light dark',
  themeColor: [
    { media: '(prefers-color-scheme: light)', color: '#f7f3ea' },
    { media: '(prefers-color-scheme: dark)', color: '#16140f' },
  ],
};

export default async function RootLayout({ children }: { children: ReactNode }) {
  const { value: account } = await attempt(() => serverCaller().account.me());
  return (
    <html lang="en-GB">
      <body>
        <a className="skip" href="#main">
          Skip to the page
        </a>
        <FigureDefs />
        <SiteHeader demo={await isDemo()} name={account?.name ?? null} mayReview={account !== null && isAtLeast(account.role, 'moderator')} />
        <main id="main" tabIndex={-1}>
          {children}
        </main>
        <SiteFooter />
      </body>
    </html>
  );
}
