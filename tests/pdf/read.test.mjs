// Reads the cards of all examples with pdf.js, as browsers do, and with Poppler; both must find
// the same text. PROGRAM is benchcard, NODE_PACKAGES a folder with pdf.js, SOURCE this project.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, readdirSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { after, test } from "node:test";

const { PROGRAM, NODE_PACKAGES, SOURCE } = process.env;
const require = createRequire(join(NODE_PACKAGES, "package.json"));
const { getDocument, VerbosityLevel } = await import(require.resolve("pdfjs-dist/legacy/build/pdf.mjs"));

const folder = mkdtempSync(join(tmpdir(), "benchcard-pdf-"));
after(() => rmSync(folder, { recursive: true }));

const examples = readdirSync(join(SOURCE, "examples")).filter((name) => name.endsWith(".recipe"));

function printed(recipe, style) {
    const file = join(folder, `${recipe}-${style}.pdf`);
    execFileSync(PROGRAM, ["print", join(SOURCE, "examples", recipe), "--style", style, "-o", file], {
        stdio: ["ignore", "ignore", "ignore"],
    });
    return file;
}

async function opened(file) {
    return getDocument({
        data: new Uint8Array(readFileSync(file)),
        verbosity: VerbosityLevel.ERRORS,
        useSystemFonts: false,
    }).promise;
}

async function textOf(document) {
    let text = "";
    for (let i = 1; i <= document.numPages; ++i) {
        const page = await document.getPage(i);
        text += (await page.getTextContent()).items.map((item) => item.str).join(" ");
    }
    return text;
}

/** How often each character stands in a text, blanks apart: readers differ in the order of columns. */
function letters(text) {
    const count = {};
    for (const character of text.normalize("NFC").replace(/\s/gu, "")) count[character] = (count[character] ?? 0) + 1;
    return Object.fromEntries(Object.entries(count).sort());
}

for (const recipe of examples)
    for (const style of ["station", "office"])
        test(`${recipe} in ${style}: the same text as by Poppler`, async () => {
            const file = printed(recipe, style);
            const document = await opened(file);
            const byPoppler = execFileSync("pdftotext", [file, "-"], { encoding: "utf8" });
            assert.ok(byPoppler.length > 400);
            assert.deepEqual(letters(await textOf(document)), letters(byPoppler));
        });

test("title, language, bookmarks and page labels", async () => {
    const recipe = "pear-and-almond-tart.recipe";
    const document = await opened(printed(recipe, "station"));
    const { info } = await document.getMetadata();
    const title = readFileSync(join(SOURCE, "examples", recipe), "utf8").match(/^recipe: (.*)$/m)[1];
    assert.equal(info.Title.trim(), title.trim());
    assert.equal(info.Language, "en");
    const outline = await document.getOutline();
    assert.ok(outline.length >= 3);
    for (const entry of outline) assert.ok(entry.title.length > 0 && entry.dest);
    assert.equal((await document.getPageLabels())[0], "1");
});
