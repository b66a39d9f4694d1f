"""What a chart looks like in a browser: on a phone, to eyes that see colours otherwise, and in grey."""
import os
import shutil
import subprocess

PHONE_PX = 390
LEAST_TEXT_PX = 8
LEAST_CONTRAST = 1.5

# Machado, Oliveira and Fernandes 2009, severity 1.0, for linear RGB; grey is the luminance of sRGB.
EYES = {"usual": [[1, 0, 0], [0, 1, 0], [0, 0, 1]],
        "protanopia": [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
        "deuteranopia": [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]],
        "tritanopia": [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]],
        "grey": [[0.2126, 0.7152, 0.0722]] * 3}

# Texts that overlap, are cut off or too small; turned ones by the corners of their own box.
TEXTS = r"""
(() => {
  const faults = [];
  const all = [...document.querySelectorAll('text')].filter(t => t.textContent.trim());
  const page = document.documentElement.getBoundingClientRect();
  const corners = t => { const b = t.getBBox(), m = t.getScreenCTM(), inset = b.height * 0.14;
    return [[b.x, b.y + inset], [b.x + b.width, b.y + inset], [b.x + b.width, b.y + b.height - inset], [b.x, b.y + b.height - inset]]
      .map(([x, y]) => [m.a * x + m.c * y + m.e, m.b * x + m.d * y + m.f]); };
  const apart = (p, q) => [p, q].some(poly => poly.some((c, i) => { const n = poly[(i + 1) % 4], ax = c[1] - n[1], ay = n[0] - c[0];
    const reach = s => s.map(([x, y]) => ax * x + ay * y);
    return Math.max(...reach(p)) <= Math.min(...reach(q)) + 0.3 || Math.max(...reach(q)) <= Math.min(...reach(p)) + 0.3; }));
  const boxes = all.map(corners);
  all.forEach((t, i) => {
    const m = t.getScreenCTM(), size = parseFloat(t.getAttribute('font-size')) * Math.hypot(m.a, m.b);
    if (size < LEAST) faults.push('text of ' + size.toFixed(1) + ' px: ' + t.textContent);
    if (boxes[i].some(([x, y]) => x < -1 || x > page.right + 1 || y < page.top - 1 || y > page.bottom + 1))
      faults.push('text beyond the picture: ' + t.textContent);
    for (let k = 0; k < i; ++k) if (!apart(boxes[i], boxes[k])) faults.push('"' + t.textContent + '" over "' + all[k].textContent + '"');
  });
  const root = document.documentElement;
  if (root.getAttribute('role') !== 'img' || !root.hasAttribute('aria-labelledby')) faults.push('no role or label');
  for (const part of ['title', 'desc'])
    if (!(root.querySelector(':scope > ' + part) || {textContent: ''}).textContent.trim()) faults.push('no ' + part);
  return faults.slice(0, 8);
})()
"""

# How each layer, effect and risk is drawn: shapes with their dashes and patterns, and the colour.
LOOKS = r"""
(() => {
  const looks = new Map();
  for (const group of document.querySelectorAll('g[data-layer], g[data-effect], g[data-risk]')) {
    const kind = ['layer', 'effect', 'risk'].find(k => group.hasAttribute('data-' + k));
    const who = kind === 'layer' ? 'layer ' + group.getAttribute('data-layer') : kind;
    const drawn = [...group.children].filter(e => ['path', 'circle', 'rect'].includes(e.tagName));
    const colour = drawn.flatMap(e => [e.getAttribute('stroke'), e.getAttribute('fill')]).find(c => /^#[0-9a-f]{6}$/.test(c));
    const pattern = group.querySelector('pattern');
    const shape = drawn.map(e => { const d = (e.getAttribute('d') || '').replace(/[-0-9. ]+/g, '');
      return [e.tagName, d.length < 12 ? d : 'line', e.getAttribute('fill') === '#fff' ? 'hollow' : '',
              e.getAttribute('stroke-dasharray') || ''].join(' '); }).join(', ') +
      (pattern ? pattern.innerHTML.replace(/#[0-9a-f]{6}/g, '') + pattern.getAttribute('patternTransform') : '');
    if (colour) looks.set(who + shape + colour, {who, shape, colour});
  }
  return [...looks.values()];
})()
"""


def luminance(colour, eye):
    channels = [int(colour[i:i + 2], 16) / 255 for i in (1, 3, 5)]
    linear = [v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in channels]
    seen = [min(1, max(0, sum(m * v for m, v in zip(row, linear)))) for row in eye]
    return 0.2126 * seen[0] + 0.7152 * seen[1] + 0.0722 * seen[2]


def told_apart(a, b):
    """By shape, dash or pattern, else by lightness to every eye."""
    if a["shape"] != b["shape"]:
        return True
    for eye in EYES.values():
        low, high = sorted((luminance(a["colour"], eye), luminance(b["colour"], eye)))
        if (high + 0.05) / (low + 0.05) < LEAST_CONTRAST:
            return False
    return True


def check_charts(browser, checks, program, folder, keep, name, args, log):
    for kind in ("risk", "chances", "planes", "triangle", "drift", "mixing", "timeline", "swabs"):
        svg = os.path.join(folder, "{}_{}.svg".format(kind, name))
        words = ["chart"] + args + ["--kind", kind] + (["--log", log] if kind in ("timeline", "swabs") else [])
        done = subprocess.run([program] + words + ["--output", svg], capture_output=True, text=True, check=False)
        checks.expect(done.returncode in (0, 1), " ".join(words) + " failed: " + done.stderr)
        what = "chart {} {}".format(kind, name)
        for width in (PHONE_PX, 760):
            browser.open(svg, width, 1100)
            for fault in browser.evaluate(TEXTS.replace("LEAST", str(LEAST_TEXT_PX))):
                checks.faults.append("{} at {} px: {}".format(what, width, fault))
        checks.expect(browser.evaluate("document.documentElement.tagName") == "svg", what + ": not well-formed")
        checks.expect(browser.evaluate("document.querySelectorAll('script').length") == 0, what + ": holds a script")
        looks = browser.evaluate(LOOKS)
        for i, look in enumerate(looks):
            for other in looks[:i]:
                checks.expect(look["who"] == other["who"] or told_apart(look, other),
                              "{}: {} looks like {}".format(what, look["who"], other["who"]))
        if keep:
            shutil.copy(svg, keep)
