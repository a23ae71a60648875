// Opens pages of cards in Chromium and says what does not fit, what cannot be read, and what does
// not print: look-at-pages.mjs CHROMIUM WIDTHxHEIGHT PAGE...  (the sheet in millimetres)
import { chromium } from 'playwright-core';
import { pathToFileURL } from 'node:url';

const [chromiumPath, sheet, ...pages] = process.argv.slice(2);
const widths = [360, 768, 1280];
const [sheetWidth, sheetHeight] = sheet.split('x').map(Number);

/// Runs in the page: every fault, a sentence each.
function faults() {
  const found = [];
  const shown = e => e.checkVisibility({ checkVisibilityCSS: true });
  const named = e => `${e.tagName.toLowerCase()}.${e.className.baseVal ?? e.className} “${e.textContent.trim().slice(0, 40)}”`;
  const width = document.documentElement.clientWidth;
  if (document.documentElement.scrollWidth > width)
    found.push(`the page is ${document.documentElement.scrollWidth} px wide`);

  // Contrast and relative luminance: WCAG 2.1, 1.4.3 and the definitions there.
  const light = ([r, g, b]) => {
    const part = v => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
    return 0.2126 * part(r) + 0.7152 * part(g) + 0.0722 * part(b);
  };
  const numbers = colour => colour.match(/[\d.]+/g).map(Number);
  const ground = e => {
    for (let at = e; at; at = at.parentElement) {
      const colour = numbers(getComputedStyle(at).backgroundColor);
      if (colour.length < 4 || colour[3] === 1) return colour;
    }
    return [255, 255, 255];
  };

  // Every stretch of text, line by line.
  const lines = [];
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const e = node.parentElement;
    if (!node.data.trim() || !shown(e)) continue;
    const style = getComputedStyle(e);
    const a = light(numbers(style.color)), b = light(ground(e));
    const contrast = (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    if (contrast < 7) found.push(`${named(e)} has a contrast of ${contrast.toFixed(2)}:1`);
    if (parseFloat(style.fontSize) < 14) found.push(`${named(e)} is set in ${style.fontSize}`);
    const range = document.createRange();
    range.selectNodeContents(node);
    for (const box of range.getClientRects())
      if (box.width > 0.5) lines.push({ e, box });
  }
  for (const { e, box } of lines) {
    if (box.left < -0.5 || box.right > width + 0.5) found.push(`${named(e)} runs out of the page`);
    const card = e.closest('article');
    const frame = card?.getBoundingClientRect();
    if (frame && (box.left < frame.left - 0.5 || box.right > frame.right + 0.5))
      found.push(`${named(e)} runs out of its card`);
  }
  for (let i = 0; i < lines.length; ++i)
    for (let k = i + 1; k < lines.length; ++k) {
      const a = lines[i].box, b = lines[k].box;
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const down = Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top);
      // Boxes of lines are higher than their letters: those of neighbouring lines may touch.
      if (across > 1 && down > 0.4 * Math.min(a.height, b.height))
        found.push(`${named(lines[i].e)} stands on ${named(lines[k].e)}`);
    }

  // A name has room for a word.
  for (const e of document.querySelectorAll('tbody .name'))
    if (e.getBoundingClientRect().width < 110) found.push(`${named(e)} is squeezed`);

  // What is touched: WCAG 2.2, 2.5.8, 24 px.
  for (const e of document.querySelectorAll('a, input')) {
    const box = e.getBoundingClientRect();
    if (box.width < 24 || box.height < 24) found.push(`${named(e)} is too small to touch`);
  }

  const ids = [...document.querySelectorAll('[id]')].map(e => e.id);
  if (new Set(ids).size !== ids.length) found.push('an id stands twice');
  for (const e of document.querySelectorAll('[aria-labelledby]'))
    if (!document.getElementById(e.getAttribute('aria-labelledby'))) found.push(`${named(e)} has no name`);
  for (const e of document.querySelectorAll('input'))
    if (e.labels.length !== 1) found.push('a box to tick has no label');
  for (const e of document.querySelectorAll('table'))
    if (!e.querySelector('th[scope]')) found.push(`${named(e)} has no headings`);
  return found;
}

/// Runs in the page as it is printed: cards that begin on another's page, and type smaller than the
/// style allows.
function printFaults() {
  const found = [];
  const points = e => parseFloat(getComputedStyle(e).fontSize) * 0.75;
  const root = getComputedStyle(document.documentElement);
  const least = name => parseFloat(root.getPropertyValue(name));
  for (const card of [...document.querySelectorAll('article')].slice(0, -1))
    if (getComputedStyle(card).breakAfter !== 'page') found.push(`${card.id} does not end its page`);
  for (const e of document.querySelectorAll('tbody .name'))
    if (e.getBoundingClientRect().width < 110) found.push(`${e.textContent.slice(0, 40)} is squeezed`);
  for (const [words, size] of [
    ['.amount b', '--amounts'], ['.name', '--names'], ['h2', '--title'], ['li', '--text'],
    ['.caution', '--text'], ['.allergens', '--text'], ['.unit', '--text'], ['.imperial', '--text'],
    ['footer', '--small'],
  ])
    for (const e of document.querySelectorAll(`article ${words}`))
      if (e.checkVisibility() && points(e) < least(size) - 0.01)
        found.push(`${words} is set in ${points(e)} pt`);
  return found;
}

/// The sizes of a PDF's pages in millimetres.
function sizesOf(pdf) {
  const boxes = pdf.toString('latin1').matchAll(/\/MediaBox \[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g);
  return [...boxes].map(box => box.slice(1).map(points => points * 25.4 / 72));
}

const browser = await chromium.launch({ executablePath: chromiumPath, args: ['--no-sandbox'] });
let looked = 0, bad = 0;
const say = (page, where, sentence) => {
  ++bad;
  console.log(`${page}: ${where}: ${sentence}`);
};
for (const file of pages) {
  const url = pathToFileURL(file).href;
  const page = await browser.newPage();
  const fetched = [];
  page.on('request', request => fetched.push(request.url()));
  page.on('console', message => say(file, 'console', message.text()));
  for (const width of widths) {
    await page.setViewportSize({ width, height: 900 });
    await page.goto(url);
    for (const fault of await page.evaluate(faults)) say(file, `${width} px`, fault);
    ++looked;
  }
  for (const other of fetched) if (other !== url) say(file, 'network', `fetches ${other}`);
  const cards = await page.locator('article').count();
  if (cards === 0) say(file, 'page', 'has no card');
  await page.emulateMedia({ media: 'print' });
  const safeWidth = Math.round((sheetWidth - 16) / 25.4 * 96); // between margins of 8 mm
  await page.setViewportSize({ width: safeWidth, height: 900 });
  for (const fault of await page.evaluate(printFaults)) say(file, 'print', fault);
  const printed = sizesOf(await page.pdf({ preferCSSPageSize: true }));
  if (printed.length < cards) say(file, 'print', `${printed.length} pages for ${cards} cards`);
  for (const [width, height] of printed)
    if (Math.abs(width - sheetWidth) > 0.5 || Math.abs(height - sheetHeight) > 0.5)
      say(file, 'print', `a page of ${width.toFixed(1)} × ${height.toFixed(1)} mm`);
  await page.close();
}
await browser.close();
console.log(`${looked} views of ${pages.length} pages, ${bad} faults`);
process.exit(bad > 0 || looked === 0 ? 1 : 0);
