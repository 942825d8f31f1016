"use strict";
// The page follows the job: events tell of a new state, the state names the
// sheets, and only the sheet in view is fetched.
const $ = id => document.getElementById(id);
let state = { pages: [], findings: [], faults: "" };
let page = 0, shown = "", zoom = 1, asked = 0;

function text(tag, content) {
  const e = document.createElement(tag);
  e.textContent = content;
  return e;
}

async function show() {
  page = Math.max(0, Math.min(page, state.pages.length - 1));
  const p = state.pages[page];
  if (!p) return;
  for (const a of $("sheets").querySelectorAll("a")) {
    if (Number(a.dataset.page) === page) { a.setAttribute("aria-current", "page"); within($("sheets"), a); }
    else a.removeAttribute("aria-current");
  }
  $("sheet").setAttribute("aria-label", "sheet " + (page + 1) + " of " + state.pages.length + ": " + name(p));
  const want = p.sum;
  $("sheet").setAttribute("aria-busy", want !== shown); // until the drawing is that of the label
  if (want === shown) return; // the sheet is as it was
  const answer = await fetch("sheet/" + page + ".svg?v=" + state.version);
  if (!answer.ok) return; // a newer state is on its way
  const svg = await answer.text();
  if (want !== state.pages[page]?.sum) return;
  shown = want;
  $("sheet").innerHTML = svg.replace(/^<\?xml[^>]*>\s*/, "");
  $("sheet").setAttribute("aria-busy", false);
  const drawing = $("sheet").querySelector("svg");
  for (const a of drawing.querySelectorAll("a")) { // rows and parts: drawn, so without words of their own
    const to = state.pages[state.marks[mark(a)]];
    if (to) a.setAttribute("aria-label", "to the sheet: " + name(to));
  }
  // Printed it is one sheet of its own size.
  $("paper").textContent = "@page { margin: 0; size: " + drawing.getAttribute("width") + " " + drawing.getAttribute("height") + "; }";
}

// within scrolls a list no further than one of its entries needs. scrollIntoView would let Tab begin there.
function within(list, entry) {
  const of = list.getBoundingClientRect(), at = entry.getBoundingClientRect();
  list.scrollTop += Math.min(0, at.top - of.top) + Math.max(0, at.bottom - of.bottom);
}

// mark is what a link in a drawing leads to.
function mark(a) { return decodeURIComponent((a.getAttribute("href") ?? a.getAttribute("xlink:href")).slice(1)); }

function name(p) { return (p.part ? p.part + ", " : "") + p.sheet; }

function go(n) {
  page = n;
  history.replaceState(null, "", "#" + (page + 1));
  show();
}

function list() {
  const nav = $("sheets");
  const focus = nav.contains(document.activeElement) ? document.activeElement.dataset.page : undefined;
  nav.replaceChildren();
  let chapter, ul;
  state.pages.forEach((p, i) => {
    if (!ul || p.chapter !== chapter) {
      chapter = p.chapter;
      nav.append(text("h2", p.chapter));
      ul = document.createElement("ul");
      nav.append(ul);
    }
    const a = text("a", p.sheet + " (" + (i + 1) + ")");
    a.href = "#" + (i + 1);
    a.dataset.page = i;
    a.onclick = e => { e.preventDefault(); go(i); };
    const li = document.createElement("li");
    li.append(a);
    ul.append(li);
  });
  if (focus !== undefined) nav.querySelector('a[data-page="' + Math.min(focus, state.pages.length - 1) + '"]')?.focus();
  const ol = $("findings");
  ol.replaceChildren();
  for (const f of state.findings) {
    const b = text("button", f.severity + " " + f.code + ": " + f.what);
    b.append(document.createElement("br"), text("small", f.place));
    b.onclick = () => go(f.page);
    const li = document.createElement("li");
    li.append(b);
    ol.append(li);
  }
  $("count").textContent = state.findings.length ? "Review: " + state.findings.length + " open" : "Review: nothing open";
}

// again finds the sheet in view among the new ones: as many of its name before it.
function again(before) {
  const p = before[page];
  if (!p) return page;
  const same = q => q.chapter === p.chapter && q.sheet === p.sheet;
  const nth = before.slice(0, page).filter(same).length;
  const now = state.pages.flatMap((q, i) => same(q) ? [i] : []);
  return now[nth] ?? now.at(-1) ?? page;
}

async function update() {
  const mine = ++asked;
  let next;
  try {
    const answer = await fetch("state");
    if (!answer.ok) return;
    next = await answer.json();
  } catch {
    return; // the connection is lost; events come when it is back
  }
  if (mine !== asked) return; // a later answer is on its way
  const last = state;
  state = next;
  document.title = $("title").textContent = state.title || "centrepop";
  $("faults").hidden = !state.faults;
  $("faults").querySelector("pre").textContent = state.faults;
  document.body.classList.toggle("stale", Boolean(state.faults));
  if (JSON.stringify([state.pages, state.findings]) !== JSON.stringify([last.pages, last.findings])) {
    list();
    page = state.edit !== last.edit && state.show >= 0 && last.version !== undefined ? state.show : again(last.pages);
  }
  $("status").textContent = state.faults ? "faults in the input" : state.pages.length + " sheets, up to date" + (state.pending ? "; the review is being worked out" : "");
  await show().catch(() => {});
}

function scale(by) {
  zoom = by ? Math.max(0.25, Math.min(8, zoom * by)) : 1;
  $("sheet").style.width = 100 * zoom + "%";
}

// A part of the arrangement, or its row, leads to its sheet.
$("sheet").addEventListener("click", e => {
  const a = e.target.closest("a");
  if (!a) return;
  e.preventDefault();
  if (mark(a) in state.marks) go(state.marks[mark(a)]);
});

$("back").onclick = () => go(page - 1);
$("next").onclick = () => go(page + 1);
$("larger").onclick = () => scale(1.25);
$("smaller").onclick = () => scale(0.8);
$("fit").onclick = () => scale(0);
$("print").onclick = () => print();
document.addEventListener("keydown", e => {
  if (e.ctrlKey || e.metaKey || e.altKey) return;
  const act = {
    PageDown: () => go(page + 1), ArrowRight: () => go(page + 1), PageUp: () => go(page - 1), ArrowLeft: () => go(page - 1),
    Home: () => go(0), End: () => go(state.pages.length - 1), "+": () => scale(1.25), "-": () => scale(0.8), "0": () => scale(0), p: () => print(),
  }[e.key];
  if (!act || zoom > 1 && e.key.startsWith("Arrow")) return; // a larger sheet is moved by the arrows
  e.preventDefault();
  act();
});

// follow hears of every new state. A connection that is lost, by a closed lid or a
// program ended and begun again, is made anew.
function follow() {
  const events = new EventSource("events");
  events.onmessage = update;
  events.onerror = () => {
    $("status").textContent = "no connection to centrepop; the sheets are as they were";
    if (events.readyState === EventSource.CLOSED) setTimeout(follow, 1000);
  };
}

if (/^#\d+$/.test(location.hash)) page = Number(location.hash.slice(1)) - 1;
follow();
