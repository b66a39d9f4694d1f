"""Renders every printed page of the program in a real browser and measures it.

usage: check_sheets.py PROGRAM SOURCE_FOLDER [FOLDER_FOR_PICTURES]

Three jobs (the demo, one without a window, a large shelf with long names in several scripts and a script in every
text field) on A4 and Letter, every chart on a phone. Exit code 1 when anything overflows, overlaps, is fetched, is not escaped, is too pale or too
small to read or to tick, when a page is empty or half empty, has no title or number, or ends with a heading or the head of a
table. With a third argument the PDF files and pictures of the pages are kept there.
"""
import json
import os
import re
import shutil
import subprocess
import sys
import tempfile

sys.dont_write_bytecode = True
sys.path.insert(0, os.path.dirname(os.path.abspath(__file__)))
from check_charts import check_charts  # noqa: E402
from chromium import Browser  # noqa: E402

PX_PER_MM = 96 / 25.4
PAPERS = {"a4": (210, 297, 595.3, 841.9), "letter": (215.9, 279.4, 612, 792)}  # mm, then points
SCRIPT = "<script>alert('x')</script>"
NAMES = ["очень длинное название растворителя без пробелов", "非常に長い溶剤の名前がここに書かれています",
         "διαλύτης με πολύ μεγάλο όνομα", "مذيب باسم طويل جدا جدا", "Lösemittelgemischbezeichnungsungetüm",
         "a name & <b>mark-up</b> \"quoted\" 'twice'", "x" * 70]


def hostile_catalogue(source, folder):
    """The shipped catalogue with a long name for every liquid."""
    target = os.path.join(folder, "solvents")
    shutil.copytree(os.path.join(source, "solvents"), target)
    count = 0
    for name in sorted(os.listdir(os.path.join(target, "liquids"))):
        path = os.path.join(target, "liquids", name)
        lines = []
        for line in open(path, encoding="utf-8"):
            if re.match(r"    name: ", line):
                count += 1
                text = "{} {} {}".format(SCRIPT, NAMES[count % len(NAMES)], count)
                line = "    name: '{}'\n".format(text.replace("'", "''"))
            elif re.match(r"      denatured: ", line):
                line = line.replace("[", "['denatured {}', ".format(text.replace("'", "''")), 1)
            lines.append(line)
        with open(path, "w", encoding="utf-8") as file:
            file.writelines(lines)
    return target


def demo_log(folder):
    """A small log: without effect, corrected, a success off the grid, withdrawn."""
    path = os.path.join(folder, "demo.log")
    lines = ['{"gentlest_log":1}',
             '{"test":1,"date":"2026-03-14","who":"AB","mixture":"isooctane 100","passage":"white cloth","x_cm":3.5,"y_cm":41,'
             '"swab":"white cotton, damp","rolls":4,"seconds":20,"removal":"no effect","original":"nothing seen"}',
             '{"test":2,"mixture":"isooctane 80, acetone 20","x_cm":3.6,"y_cm":41,"removal":"softened or gelled"}',
             '{"test":3,"mixture":"isooctane 71, acetone 29","x_cm":40,"y_cm":10,"passage":"white cloth",'
             '"removal":"fully removed","original":"nothing seen"}',
             '{"test":2,"mixture":"isooctane 80, acetone 20","x_cm":3.6,"y_cm":41,"removal":"partly removed","correction":"dry"}',
             '{"test":4,"mixture":"acetone 100","removal":"fully removed","original":"softened"}',
             '{"test":4,"correction":"wrong bottle","withdrawn":true}']
    with open(path, "w", encoding="utf-8") as file:
        file.write("\n".join(lines) + "\n")
    return path


def harm_log(folder):
    """The edge, the picture, a success, and a harm that closes a passage and the rungs above."""
    path = os.path.join(folder, "harm.log")
    tests = [("isooctane 100", True, "", "no effect", "nothing seen"),
             ("isooctane 85, acetone 15", True, "", "softened or gelled", "nothing seen"),
             ("isooctane 100", False, "white cloth", "no effect", "nothing seen"),
             ("isooctane 85, acetone 15", False, "white cloth", "mostly removed", "nothing seen"),
             ("isooctane 70, acetone 30", False, "dark background", "fully removed", "change that recovers")]
    with open(path, "w", encoding="utf-8") as file:
        file.write('{"gentlest_log":1}\n')
        for number, (mixture, edge, passage, removal, original) in enumerate(tests, 1):
            file.write(json.dumps({"test": number, "mixture": mixture, "at_edge": edge, "passage": passage, "x_cm": 9 * number,
                                   "y_cm": 20, "removal": removal, "original": original}) + "\n")
    return path


def hostile_log(folder):
    """Long words, several scripts and a script in every text field; a mixture that nobody knows; a cut line."""
    keys = ("who", "mixture", "layer", "passage", "swab", "clearing", "after_drying", "remark")
    path = os.path.join(folder, "hostile.log")
    with open(path, "w", encoding="utf-8") as file:
        file.write('{"gentlest_log":1}\n')
        for number in range(1, 9):
            reading = {key: "{} {}".format(SCRIPT, NAMES[(number + i) % len(NAMES)]) for i, key in enumerate(keys)}
            reading.update({"test": number, "x_cm": 30.0 * number, "y_cm": 100, "removal": "partly removed"})
            if number > 5:
                reading.update({"mixture": "acetone 50, ethanol 50", "layer": "", "passage": ""})
            file.write(json.dumps(reading) + "\n")
            if number % 3 == 0:
                reading.update({"correction": SCRIPT + " " + NAMES[number % len(NAMES)], "withdrawn": number == 3})
                file.write(json.dumps(reading) + "\n")
        file.write('{"test":9,"mixture":"' + SCRIPT)
    return path


def hostile_job(source, folder):
    shelf = []
    for name in ("alcohols", "ketones", "esters", "aromatic_hydrocarbons", "aliphatic_hydrocarbons", "ethers"):
        text = open(os.path.join(source, "solvents/liquids", name + ".yaml"), encoding="utf-8").read()
        for record in re.split(r"\n  - id: ", text)[1:]:
            if "\n    hansen:" in record and "reference_only" not in record:
                shelf.append(record.split("\n", 1)[0].strip())
    words = SCRIPT.replace("'", "''")
    job = ["gentlest_job: 1", "object:", "  title: '{} {}'".format(words, " ".join(NAMES[:5]).replace("'", "''")),
           "  owner_number: '{}'".format(words), "  width_cm: 31", "  height_cm: 240", "  paint_age_years: 150",
           "  note: '{} {}'".format(words, "y" * 300), "layers:",
           "  - {{name: '{} ワニス', role: remove, found: dammar_aged, note: '{}'}}".format(words, words),
           "  - {{name: '{}', role: keep, found: oil_paint_old}}".format("z" * 60),
           "  - {{name: '{} краска', role: keep, recorded: oil_paint_old}}".format(words), "passages:",
           "  - {{name: '{}', of: '{}', note: '{}'}}".format(words, "z" * 60, words), "shelf:"]
    job += ["  - " + one for one in shelf[:45]]
    job += ["limits: {parts: 2, bottles: 3, step_percent: 10, allow_drift: true, allow_splitting: true}"]
    path = os.path.join(folder, "hostile.yaml")
    with open(path, "w", encoding="utf-8") as file:
        file.write("\n".join(job) + "\n")
    return path


MEASURE = r"""
(() => {
  const faults = [];
  const say = (what, element) => { if (faults.length < 12) faults.push(what + ': ' +
    (element ? (element.textContent || element.outerHTML || '').trim().slice(0, 60) : '')); };
  const right = document.documentElement.clientWidth + 1.5;
  if (document.documentElement.lang !== 'en') say('no language');
  if (!document.title.trim()) say('no title');
  if (document.querySelector('script, iframe, object, embed, link')) say('something that runs or loads');
  for (const e of document.querySelectorAll('*'))
    for (const a of e.attributes) {
      if (/^on/i.test(a.name)) say('handler ' + a.name, e);
      if (/^(src|href|xlink:href)$/i.test(a.name) && !/^(#|data:image)/.test(a.value)) say('link ' + a.value, e);
    }
  let level = 0;
  const headings = [...document.querySelectorAll('h1,h2,h3,h4,h5,h6')];
  if (headings.filter(h => h.tagName === 'H1').length !== 1) say('not one h1');
  for (const h of headings) {
    const now = +h.tagName[1];
    if (now > level + 1) say('heading level skipped', h);
    level = now;
  }
  const shown = e => !e.closest('symbol, defs, clipPath, head, .definitions');
  for (const e of document.querySelectorAll('body *')) {
    if (!shown(e) || e.closest('svg svg') || (e.closest('svg') && e.tagName !== 'svg')) continue;
    const box = e.getBoundingClientRect();
    if (box.width && (box.right > right || box.left < -1)) say('beyond the page: ' + e.tagName + ' ' + box.right, e);
    if (getComputedStyle(e).display !== 'inline' && e.scrollWidth > e.clientWidth + 1 && e.clientWidth && e.tagName !== 'svg')
      say('overflows: ' + e.tagName, e);
    if (getComputedStyle(e).breakInside === 'avoid' && box.height > PAGE_HEIGHT) say('higher than a page', e);
  }
  const ids = [...document.querySelectorAll('[id]')].map(e => e.id);
  for (const id of ids) if (ids.indexOf(id) !== ids.lastIndexOf(id)) say('id twice: ' + id);
  for (const e of document.querySelectorAll('svg, [aria-labelledby], [aria-describedby]')) {
    if (!shown(e)) continue;
    for (const name of ['aria-labelledby', 'aria-describedby'])
      if (e.hasAttribute(name) && !(document.getElementById(e.getAttribute(name)) || {textContent: ''}).textContent.trim())
        say(name + ' names nothing', e);
    if (e.tagName === 'svg' && !(e.querySelector(':scope > title') && e.querySelector(':scope > desc')))
      say('picture without title or description', e);
  }
  const touch = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 1 &&
                          Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 2.5;
  let texts = 0;
  for (const svg of document.querySelectorAll('svg')) {
    if (!shown(svg)) continue;
    const frame = svg.getBoundingClientRect();
    const all = [...svg.querySelectorAll('text')];
    texts += all.length;
    const boxes = all.map(t => t.getBoundingClientRect());
    boxes.forEach((box, i) => {
      if (box.left < frame.left - 1 || box.right > frame.right + 1 || box.top < frame.top - 1 || box.bottom > frame.bottom + 1.5)
        say('text beyond its picture', all[i]);
      if (all[i].hasAttribute('transform')) return;
      for (let k = 0; k < i; ++k)
        if (!all[k].hasAttribute('transform') && touch(box, boxes[k])) say('text over text "' + all[k].textContent + '"', all[i]);
    });
    for (const use of svg.querySelectorAll('use')) {
      if (svg.classList.contains('pictogram')) continue;
      const box = use.getBoundingClientRect();
      boxes.forEach((other, i) => { if (touch(box, other)) say('text over a pictogram', all[i]); });
    }
  }
  const channel = v => { v /= 255; return v <= 0.03928 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4); };
  const numbers = c => (c.match(/[\d.]+/g) || [0, 0, 0, 0]).map(Number);
  const light = c => 0.2126 * channel(c[0]) + 0.7152 * channel(c[1]) + 0.0722 * channel(c[2]);
  const paper = e => { for (; e; e = e.parentElement) {
    const c = numbers(getComputedStyle(e).backgroundColor);
    if (c.length < 4 || c[3] > 0) return c; } return [255, 255, 255]; };
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  let worst = 21;
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const e = node.parentElement;
    if (!node.nodeValue.trim() || !shown(e)) continue;
    const style = getComputedStyle(e);
    const ink = light(numbers(e.closest('svg') ? style.fill : style.color));
    const back = light(paper(e));
    const contrast = (Math.max(ink, back) + 0.05) / (Math.min(ink, back) + 0.05);
    worst = Math.min(worst, contrast);
    if (contrast < 4.5) say('too pale, ' + contrast.toFixed(1), e);
  }
  let smallest = 99;
  const small = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = small.nextNode(); node; node = small.nextNode()) {
    const e = node.parentElement;
    if (!node.nodeValue.trim() || !shown(e) || /^(title|desc)$/i.test(e.tagName) || e.closest('.chart')) continue;
    const scale = e.closest('svg') && e.getScreenCTM ? e.getScreenCTM().a : 1;
    const points = parseFloat(getComputedStyle(e).fontSize) * scale * 0.75;
    smallest = Math.min(smallest, points);
    if (points < LEAST_POINTS - 0.05) say('letters of ' + points.toFixed(1) + ' pt', e);
  }
  const mm = 96 / 25.4;
  for (const e of document.querySelectorAll('.tick')) {
    const box = getComputedStyle(e, '::before');
    if (parseFloat(box.width) < 4 * mm - 0.1 || parseFloat(box.height) < 4 * mm - 0.1) say('a box below 4 mm', e);
  }
  for (const e of document.querySelectorAll('.line > div, .card-head > div'))
    if (e.getBoundingClientRect().height < 8 * mm - 0.1) say('a line below 8 mm', e);
  const heads = [...document.querySelectorAll('h1,h2,h3,thead tr')].filter(e => !e.closest('thead thead') && !e.querySelector('.running'))
    .map(e => e.tagName === 'TR' ? [...e.cells].map(c => c.textContent).join(' ') : e.textContent);
  return {faults, texts, worst, smallest, heads, title: document.title, words: document.body.textContent.length, scripts: document.body.textContent.split('<script>').length - 1};
})()
"""


class Checks:
    def __init__(self):
        self.faults = []

    def expect(self, holds, words):
        if not holds:
            self.faults.append(words)


def make(program, args, path):
    done = subprocess.run([program] + args + ["--output", path], capture_output=True, text=True, check=False)
    if done.returncode not in (0, 1):
        raise SystemExit("{} failed:\n{}".format(" ".join(args), done.stderr))
    return done.returncode


def pages_of(pdf):
    text = subprocess.run(["pdfinfo", pdf], capture_output=True, text=True, check=True).stdout
    size = re.search(r"Page size:\s+([\d.]+) x ([\d.]+)", text)
    return int(re.search(r"Pages:\s+(\d+)", text).group(1)), float(size.group(1)), float(size.group(2))


def read_grey(path):
    data = open(path, "rb").read()
    header = re.match(rb"P5\s+(\d+)\s+(\d+)\s+255\s", data)
    return int(header.group(1)), int(header.group(2)), data[header.end():]


def check_pages(checks, what, pdf, folder, margin_mm):
    """Every page holds something, and nothing reaches into the white margin."""
    stem = os.path.join(folder, "page")
    subprocess.run(["pdftoppm", "-r", "40", "-gray", pdf, stem], check=True)
    for name in sorted(os.listdir(folder)):
        if not name.startswith("page"):
            continue
        path = os.path.join(folder, name)
        width, height, grey = read_grey(path)
        dark = sum(1 for value in grey if value < 200)
        checks.expect(dark > 40, "{}: {} is empty".format(what, name))
        edge = int(margin_mm / 25.4 * 40)
        if edge:
            rim = b"".join(grey[y * width:y * width + edge] + grey[(y + 1) * width - edge:(y + 1) * width]
                           for y in range(height))
            checks.expect(min(rim) > 200, "{}: {} reaches into the margin".format(what, name))
        os.remove(path)


def flat(text):
    return re.sub(r"[^\w]+", "", text)


def check_reading(checks, what, pdf, seen):
    """Every page but those of labels has title and number, and does not end with a heading or the head of a table."""
    text = subprocess.run(["pdftotext", "-layout", pdf, "-"], capture_output=True, text=True, check=True).stdout
    title = flat(seen["title"].split(": ", 1)[1])[:16]
    heads = {flat(head) for head in seen["heads"]}
    for number, page in enumerate(text.split("\f")[:-1], 1):
        lines = [line for line in page.splitlines() if line.strip()]
        checks.expect(title in flat(page), "{}: page {} has no title".format(what, number))
        checks.expect(re.search(r"\d+\s*/\s*\d+|page \d+ of \d+", page), "{}: page {} has no number".format(what, number))
        checks.expect(len(lines) > 1 and flat(lines[-2]) not in heads, "{}: page {} ends with a head: {}".format(
            what, number, lines[-2:-1]))


def filled(grey, width, height):
    """How far down a page is printed, above its foot: 0 to 1."""
    foot = int(height * (1 - 13 / 290))
    for y in range(foot, 0, -1):
        if min(grey[y * width:(y + 1) * width]) < 200:
            return y / foot
    return 0


def check_fill(checks, what, pdf, folder, least):
    stem = os.path.join(folder, "fill")
    subprocess.run(["pdftoppm", "-r", "40", "-gray", pdf, stem], check=True)
    names = sorted(name for name in os.listdir(folder) if name.startswith("fill"))
    for name in names[:-1]:
        width, height, grey = read_grey(os.path.join(folder, name))
        share = filled(grey, width, height)
        checks.expect(share >= least, "{}: {} is filled by {:.0f} % only".format(what, name, 100 * share))


def check_page(browser, checks, what, path, paper, margins_mm, keep):
    width, height, points_wide, points_high = PAPERS[paper]
    content = (width - 2 * margins_mm[0]) * PX_PER_MM
    requests = browser.open(path, round(content), 1100)
    outside = [url for url in requests if not url.startswith(("file://", "data:"))]
    checks.expect(not outside, "{}: asks for {}".format(what, outside))
    limit = (height - margins_mm[1]) * PX_PER_MM
    is_labels = margins_mm[0] == 0
    seen = browser.evaluate(MEASURE.replace("PAGE_HEIGHT", str(limit)).replace("LEAST_POINTS", "7" if is_labels else "8"))
    for fault in seen["faults"]:
        checks.faults.append("{}: {}".format(what, fault))
    checks.expect(seen["words"] > 300, what + ": hardly any text")
    checks.expect(seen["texts"] > 3, what + ": no text in its pictures")
    pdf = path[:-5] + ".pdf"
    browser.pdf(pdf)
    pages, wide, high = pages_of(pdf)
    checks.expect(abs(wide - points_wide) < 2 and abs(high - points_high) < 2, "{}: page of {} x {}".format(what, wide, high))
    folder = tempfile.mkdtemp(dir=os.path.dirname(path))
    check_pages(checks, what, pdf, folder, 8 if margins_mm[0] > 0 else 0)
    if not is_labels:
        check_reading(checks, what, pdf, seen)
        check_fill(checks, what, pdf, folder, 0.4 if "hostile" in what else 0.5)  # names of 70 letters leave room
    if keep:
        subprocess.run(["pdftoppm", "-r", "70", "-png", pdf, os.path.join(keep, os.path.basename(path)[:-5])], check=True)
        shutil.copy(pdf, keep)
    return pages, seen


def check_job(browser, checks, program, folder, keep, name, args, log, pages_allowed, expected_exit):
    for paper in PAPERS:
        for command, margins, limits in (("sheet", (15, 19), pages_allowed), ("labels", (0, 0), (2, 3)),
                                         ("report", (15, 19), (2, 12))):
            what = "{} {} {}".format(command, name, paper)
            path = os.path.join(folder, "{}_{}_{}.html".format(command, name, paper))
            extra = {"sheet": ["--sites", "3,4; 12.5,30; 12.6,30; 60,47"], "labels": ["--maker", SCRIPT, "--date", SCRIPT],
                     "report": []}[command]
            words = [args[0], log] if command == "report" else [args[0]]
            code = make(program, [command] + words + args[1:] + ["--paper", paper] + extra, path)
            checks.expect(code == (0 if command == "report" else expected_exit), "{}: exit code {}".format(what, code))
            checks.expect("<script" not in open(path, encoding="utf-8").read(), what + ": a script in the file")
            pages, seen = check_page(browser, checks, what, path, paper, margins, keep)
            checks.expect(limits[0] <= pages <= limits[1], "{}: {} pages, expected {} to {}".format(what, pages, *limits))
            checks.expect(name != "hostile" or seen["scripts"] > 0, what + ": typed text is missing")
            print("{}: {} pages, least contrast {:.1f}".format(what, pages, seen["worst"]))


def check_followed(browser, checks, program, folder, keep, name, args, log, pages_allowed):
    """Sheet and labels as they stand after the tests of a log."""
    for paper in PAPERS:
        for command, margins, limits in (("sheet", (15, 19), pages_allowed), ("labels", (0, 0), (1, 3))):
            what = "{} after the tests, {} {}".format(command, name, paper)
            path = os.path.join(folder, "{}_followed_{}_{}.html".format(command, name, paper))
            code = make(program, [command] + args + ["--log", log, "--paper", paper], path)
            checks.expect(code in (0, 1), "{}: exit code {}".format(what, code))
            pages, seen = check_page(browser, checks, what, path, paper, margins, keep)
            checks.expect(limits[0] <= pages <= limits[1], "{}: {} pages, expected {} to {}".format(what, pages, *limits))
            print("{}: {} pages, least contrast {:.1f}".format(what, pages, seen["worst"]))


def main():
    program, source = sys.argv[1], sys.argv[2]
    keep = sys.argv[3] if len(sys.argv) > 3 else None
    if keep:
        os.makedirs(keep, exist_ok=True)
    checks = Checks()
    with tempfile.TemporaryDirectory(prefix="gentlest_sheets_") as folder:
        browser = Browser()
        try:
            catalogue = hostile_catalogue(source, folder)
            log = demo_log(folder)
            jobs = [("demo", ["demo"], log, (4, 7), 0), ("no_window", ["demo", "--risk-limit", "0.06"], log, (3, 6), 1),
                    ("hostile", [hostile_job(source, folder), "--data", catalogue], hostile_log(folder), (5, 20), 0)]
            for name, args, tests, pages, code in jobs:
                check_job(browser, checks, program, folder, keep, name, args, tests, pages, code)
            for name, args, tests, pages, _ in (jobs[0], jobs[2]):
                check_charts(browser, checks, program, folder, keep, name, args, tests)
                check_followed(browser, checks, program, folder, keep, name, args, tests, pages)
            check_followed(browser, checks, program, folder, keep, "harm", jobs[0][1], harm_log(folder), jobs[0][3])
        finally:
            browser.close()
    for fault in checks.faults:
        print("FAULT " + fault)
    print("{} faults".format(len(checks.faults)))
    return 1 if checks.faults else 0


if __name__ == "__main__":
    sys.exit(main())
