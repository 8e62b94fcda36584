import type { Html } from './html.ts';
import { markup } from './html.ts';
import { PAGE_STYLE } from './page-style.ts';

/** A whole page that prints and needs no other file. */
export function pageOf(title: string, body: Html): string {
  return markup`<!doctype html>
    <html lang="en">
      <head>
        <meta charset="utf-8"/>
        <meta name="viewport" content="width=device-width, initial-scale=1"/>
        <title>${title}</title>
        <style>
          ${PAGE_STYLE}
        </style>
      </head>
      <body>
        <main>
          ${body}
        </main>
      </body>
    </html> `.html;
}
