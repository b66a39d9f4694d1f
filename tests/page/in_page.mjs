// What the tests do inside the page: finding a control as a person does, by what it is and what it is called.
// The text of this function is put into the page under test, so it stands alone.

export function findInPage(wanted) {
  const kinds = {
    button: "button,[role=button],input[type=button],input[type=submit],summary",
    textbox: "input:not([type]),input[type=text],input[type=search],input[type=number],input[type=date],textarea,[role=textbox],[role=spinbutton],[role=searchbox]",
    combobox: "select,[role=combobox],input[list]",
    checkbox: "input[type=checkbox],[role=checkbox],[role=switch]",
    radio: "input[type=radio],[role=radio]",
    option: "option,[role=option]",
    link: "a[href],[role=link]",
    tab: "[role=tab]",
    file: "input[type=file]",
    heading: "h1,h2,h3,h4,h5,h6,[role=heading]",
    group: "nav,fieldset,details,[role=group],section,article,li,[role=region],[role=radiogroup],[role=listitem]",
    any: "*",
  };
  const short = (text) => (text || "").replace(/\s+/g, " ").trim();
  const shownText = (element) => {
    if (element.nodeType === 3) return element.data;
    if (element.nodeType !== 1 || element.getAttribute("aria-hidden") === "true") return "";
    if (/^(INPUT|SELECT|TEXTAREA|STYLE|SCRIPT)$/.test(element.tagName)) return "";
    return element.getAttribute("aria-label") || [...element.childNodes].map((one) => (one.nodeType === 3 ? one.data : ` ${shownText(one)} `)).join("");
  };
  const nameOf = (element, role = wanted.role) => {
    const by = element.getAttribute("aria-labelledby");
    if (by) return short(by.split(/\s+/).map((id) => document.getElementById(id)).filter(Boolean).map(shownText).join(" "));
    if (element.hasAttribute("aria-label")) return short(element.getAttribute("aria-label"));
    if (element.labels && element.labels.length) return short([...element.labels].map(shownText).join(" "));
    if (element.tagName === "FIELDSET") return short(shownText(element.querySelector("legend") || element));
    if (role === "group") {
      const head = element.querySelector("summary,h1,h2,h3,h4,h5,h6");
      return short(head ? shownText(head) : "");
    }
    return short(shownText(element)) || short(element.value && element.type !== "text" ? element.value : "") || short(element.title || element.placeholder || "");
  };
  const isShown = (element) => {
    if (wanted.role === "file" || wanted.role === "option") return true;
    for (let closed = element.closest("details:not([open])"); closed; closed = closed.parentElement.closest("details:not([open])"))
      if (!closed.querySelector("summary")?.contains(element) && closed !== element) return false;
    const box = element.getBoundingClientRect();
    return box.width > 0 && box.height > 0 && getComputedStyle(element).visibility !== "hidden" && !element.closest("[hidden],[inert]");
  };
  const matches = (name, pattern) => {
    if (pattern === undefined) return true;
    const form = /^\/(.*)\/([a-z]*)$/s.exec(pattern);
    return form ? new RegExp(form[1], form[2]).test(name) : name === pattern;
  };
  const among = (root, target) =>
    [...root.querySelectorAll(kinds[target.role] || `[role=${target.role}]`)].filter((element) => isShown(element) && matches(nameOf(element, target.role), target.name));
  let roots = [document];
  if (wanted.within) roots = among(document, { role: "group", ...wanted.within });
  // Of groups within groups the innermost counts.
  roots = roots.filter((root) => !roots.some((other) => other !== root && root.contains(other)));
  const found = roots.flatMap((root) => among(root, wanted));
  if (wanted.list) return found.map((element) => nameOf(element));
  const element = found.at(wanted.nth ?? 0);
  for (const old of document.querySelectorAll("[data-found]")) old.removeAttribute("data-found");
  if (!element) return null;
  element.setAttribute("data-found", "");
  return { name: nameOf(element), count: found.length, tag: element.tagName, checked: !!element.checked || element.getAttribute("aria-checked") === "true" || element.getAttribute("aria-pressed") === "true", disabled: !!element.disabled || element.getAttribute("aria-disabled") === "true" };
}

/** Puts a text into the found field at once, as pasting does. */
export function pasteInPage(text) {
  const field = document.querySelector("[data-found]");
  field.focus();
  const kind = field.tagName === "TEXTAREA" ? HTMLTextAreaElement : field.tagName === "SELECT" ? HTMLSelectElement : HTMLInputElement;
  Object.getOwnPropertyDescriptor(kind.prototype, "value").set.call(field, text);
  field.dispatchEvent(new InputEvent("input", { bubbles: true, inputType: "insertFromPaste" }));
  field.dispatchEvent(new Event("change", { bubbles: true }));
  return field.value;
}

/** Keeps what the page hands over to be saved, so that a test reads it in any browser. */
export function catchSavedFiles() {
  if (window.savedFiles) return;
  window.savedFiles = {};
  const blobs = new Map();
  const make = URL.createObjectURL.bind(URL);
  URL.createObjectURL = (blob) => {
    const address = make(blob);
    blobs.set(address, blob);
    return address;
  };
  const keep = (link) => {
    const name = link.download;
    // As bytes: a Blob's own text drops a byte order mark.
    blobs.get(link.href)?.arrayBuffer().then((bytes) => (window.savedFiles[name] = btoa(Array.from(new Uint8Array(bytes), (byte) => String.fromCharCode(byte)).join(""))));
  };
  const click = HTMLAnchorElement.prototype.click;
  HTMLAnchorElement.prototype.click = function () {
    if (this.hasAttribute("download")) keep(this);
    else click.call(this);
  };
  document.addEventListener("click", (event) => {
    const link = event.target.closest?.("a[download]");
    if (!link) return;
    event.preventDefault();
    keep(link);
  }, true);
  delete window.showSaveFilePicker;
}
