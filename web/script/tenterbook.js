// What pages do beyond plain HTML. Everything here is a convenience: each page works without it.

/** A sentence of the page's language; {name} stands for a value. */
const say = (key, values = {}) =>
  Object.entries(values).reduce((text, [name, value]) => text.replace(`{${name}}`, () => value), document.getElementById("sentences")?.dataset[key] ?? "");

const wait = (milliseconds, work) => {
  let timer;
  return (...given) => {
    clearTimeout(timer);
    timer = setTimeout(() => work(...given), milliseconds);
  };
};

/** Beneath a quantity: what it means in both systems of units, or why it is not clear yet. */
const understand = async (input) => {
  const line = document.getElementById(`${input.id}-read`);
  if (!line) return;
  if (!input.value.trim()) {
    line.textContent = "";
    return;
  }
  const answer = await fetch(`/api/understood?unit=${input.dataset.unit}&text=${encodeURIComponent(input.value)}`);
  const read = await answer.json();
  line.textContent = read.problem ?? read.read ?? "";
  line.classList.toggle("unclear", "problem" in read);
};
const understandings = new WeakMap();
const understandSoon = (input) => {
  if (!understandings.has(input)) understandings.set(input, wait(200, () => understand(input)));
  understandings.get(input)();
};

const KEPT = "typing ";
const draftAddress = (name) => `/drafts/${name}`.replace(/\/$/, "");

/** Typing that the program could not take stays in the browser. */
function keepHere(form, body) {
  try {
    localStorage.setItem(KEPT + form.dataset.draft, body.toString());
  } catch { /* a full or forbidden store: the form on screen still holds it */ }
}

/** Hands typing kept in the browser over to the program, and shows it where its form is open. */
async function handOver() {
  for (const key of Object.keys(localStorage).filter((each) => each.startsWith(KEPT))) {
    const name = key.slice(KEPT.length);
    try {
      const answer = await fetch(draftAddress(name), { method: "POST", body: new URLSearchParams(localStorage.getItem(key)) });
      if (!answer.ok) continue;
    } catch {
      continue;
    }
    localStorage.removeItem(key);
    if (document.querySelector(`form[data-draft="${CSS.escape(name)}"]`)) location.reload();
  }
}

function showUnanswered(form) {
  let box = form.querySelector("[data-unanswered]");
  if (!box) {
    box = document.createElement("div");
    box.className = "trouble";
    box.setAttribute("role", "alert");
    box.dataset.unanswered = "";
    form.querySelector(".form-end")?.before(box);
  }
  box.textContent = say("notSaved");
  box.scrollIntoView({ block: "center" });
}

/** Unsaved typing is kept on this computer as it is typed, so that a reload loses nothing. */
function keepDrafts(form) {
  const told = form.querySelector("[data-kept]");
  const leave = form.querySelector("[data-leave]");
  let touched = false;
  // What is sent while the page goes away may hold 64 KB at most; browsers refuse more (Fetch, "keepalive").
  const keep = async (leaving = false) => {
    const body = new URLSearchParams();
    for (const [name, value] of new FormData(form)) {
      const secret = form.querySelector(`input[type="password"][name="${CSS.escape(name)}"]`);
      if (typeof value === "string" && !secret) body.append(name, value);
    }
    try {
      const answer = await fetch(draftAddress(form.dataset.draft), { method: "POST", body, keepalive: leaving });
      if (answer.ok) localStorage.removeItem(KEPT + form.dataset.draft);
      // Leaving loses nothing from now on, and the way out says so.
      if (leave && answer.ok) leave.textContent = say("leaveForNow");
      if (told) told.textContent = say(answer.ok ? "typingKept" : "typingNotKept");
    } catch {
      keepHere(form, body);
      if (told) told.textContent = say("noAnswer");
    }
  };
  let sent = false;
  // Once the form is sent, a draft arriving after the save would bring back what is saved already.
  // A form whose rows were rearranged gave way to a new one, which keeps what is typed from then on.
  const later = wait(700, () => { if (!sent && form.isConnected) keep(); });
  form.addEventListener("input", () => { touched = true; sent = false; later(); });
  form.addEventListener("draft", () => { touched = true; keep(); });
  // A form sent while the program is down would be replaced by the browser's error page, so it is asked first.
  let answers = false;
  let asking = false;
  form.addEventListener("submit", async (event) => {
    if (answers) {
      answers = false;
      sent = true;
      return;
    }
    event.preventDefault();
    if (asking) return;
    asking = true;
    const { submitter } = event;
    try {
      await fetch("/api/understood?unit=gram&text=1", { cache: "no-store" });
      answers = true;
    } catch {
      await keep();
      showUnanswered(form);
    }
    asking = false;
    if (!answers) return;
    localStorage.removeItem(KEPT + form.dataset.draft);
    form.querySelector("[data-unanswered]")?.remove();
    form.requestSubmit(submitter);
    answers = false;
  });
  window.addEventListener("pagehide", () => { if (touched && !sent && form.isConnected) keep(true); });
}

/**
 * Buttons for rows show the changed form in place: the page keeps its address, its scroll and its open cards, and Back leaves the
 * form at once. Where that fails the form is sent as without scripts.
 */
function rearrangeInPlace(form) {
  let plainly = false;
  form.addEventListener("submit", async (event) => {
    const { submitter } = event;
    if (plainly || submitter?.name !== "order") return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (!await showAnew(form, submitter.value)) {
      plainly = true;
      form.requestSubmit(submitter);
      plainly = false;
    }
  });
}

/** Sends a form with an order for its rows and shows the answer in its place; false where there was no such answer. */
async function showAnew(form, order) {
  const body = new FormData(form);
  body.set("order", order);
  let answer;
  try {
    answer = await fetch(form.action, { method: "POST", body: form.enctype === "multipart/form-data" ? body : new URLSearchParams(body) });
  } catch {
    return false;
  }
  if (!answer.ok || answer.redirected) return false;
  const page = new DOMParser().parseFromString(await answer.text(), "text/html");
  const main = document.getElementById("main");
  const fresh = page.getElementById("main");
  if (!fresh || !form.isConnected) return false;
  for (const open of main.querySelectorAll("details[id][open]")) {
    fresh.querySelector(`#${CSS.escape(open.id)}`)?.setAttribute("open", "");
  }
  main.replaceChildren(...fresh.childNodes);
  globalThis.htmx?.process(main);
  prepare(main);
  document.dispatchEvent(new CustomEvent("tenterbook:replaced", { detail: main }));
  return true;
}

/** A touch on the outline of a board opens a hole with its place filled in; a photograph of the board may lie beneath. */
function placeHoles(figure) {
  const board = figure.querySelector(".hole-board");
  const svg = board.querySelector("svg");
  figure.dataset.live = "";
  figure.querySelectorAll("[data-needs-script]").forEach((each) => { each.hidden = false; });
  board.addEventListener("click", (event) => {
    const frame = svg.getBoundingClientRect();
    const size = svg.viewBox.baseVal;
    const at = (from, length, whole) => Math.round(Math.min(1, Math.max(0, from / length)) * whole);
    const across = at(event.clientX - frame.left, frame.width, size.width);
    const down = at(event.clientY - frame.top, frame.height, size.height);
    const { holes, behind } = figure.dataset;
    showAnew(figure.closest("form"), `add ${holes}.holes acrossMm=${across}${behind}&downMm=${down}${behind}`);
  });
  figure.querySelector("[data-beneath]")?.addEventListener("change", (event) => {
    const [file] = event.target.files;
    board.style.backgroundImage = file ? `url(${URL.createObjectURL(file)})` : "";
    board.classList.toggle("over-picture", Boolean(file));
  });
}

/**
 * A form whose photographs are still on their way is sent once they have arrived, and its button says so. Where one of them could
 * not be taken, or the maker no longer waits, the form stays as it is.
 */
function sendAfterPhotographs(form) {
  const button = form.querySelector(".form-end .primary");
  const usual = button?.textContent;
  const stop = document.createElement("button");
  stop.type = "button";
  stop.className = "quiet";
  stop.textContent = say("stopWaiting");
  let running = 0;
  let missed = false;
  let waiting = false;
  let sent = false;
  let submitter = null;
  const end = () => {
    waiting = false;
    stop.remove();
    if (!button) return;
    button.textContent = usual;
    button.removeAttribute("aria-disabled");
  };
  const stay = () => {
    end();
    form.dispatchEvent(new Event("draft"));
  };
  stop.addEventListener("click", () => { stay(); button?.focus(); });
  form.addEventListener("submit", (event) => {
    if (!running) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    if (waiting) return;
    ({ submitter } = event);
    waiting = true;
    missed = false;
    if (!button) return;
    button.textContent = say("photographsFirst");
    button.setAttribute("aria-disabled", "true");
    button.after(stop);
  });
  return {
    /** Whether the form is sent as soon as it may be, so that nothing else is to be done with it. */
    leaving: () => waiting || sent,
    begin: (count) => {
      running += count;
      sent = false;
    },
    arrived: (well) => {
      running -= 1;
      missed ||= !well;
      if (running || !waiting) return;
      if (missed) {
        stay();
        form.querySelector("[data-photo-progress]")?.scrollIntoView({ block: "center" });
      } else {
        end();
        sent = true;
        form.requestSubmit(submitter);
      }
    },
  };
}

/** Photographs: choose, drop, paste; each is sent by itself, and a bad one spoils no other. */
function takePhotographs(form) {
  const area = form.querySelector("[data-photo-drop]");
  const rows = form.querySelector("[data-photo-rows]");
  const list = form.querySelector("[data-photo-progress]");
  const input = form.querySelector("input[type=file]");
  if (!area || !input) return;
  const sending = sendAfterPhotographs(form);

  const send = (file) => new Promise((done) => {
    const item = document.createElement("li");
    const label = document.createElement("span");
    const bar = document.createElement("progress");
    bar.max = 1;
    bar.value = 0;
    bar.setAttribute("aria-label", file.name);
    label.textContent = `${file.name} `;
    item.append(label, bar);
    list.append(item);
    const request = new XMLHttpRequest();
    const stop = document.createElement("button");
    stop.type = "button";
    stop.className = "quiet";
    stop.textContent = say("stop");
    stop.addEventListener("click", () => request.abort());
    item.append(stop);
    request.upload.addEventListener("progress", (event) => { bar.value = event.total ? event.loaded / event.total : 0; });
    request.addEventListener("loadend", () => {
      let answer = null;
      try { answer = JSON.parse(request.responseText); } catch { /* told below */ }
      const photo = Array.isArray(answer) ? answer[0] : null;
      bar.remove();
      stop.remove();
      if (photo && photo.digest) {
        const twice = document.querySelector(`input[value="${photo.digest}"]`);
        if (twice) {
          label.textContent = say("inThisForm", { file: file.name });
        } else {
          addRow(photo, file.name);
          const notes = [...(photo.notes ?? [])];
          if (photo.shownBy?.length) notes.push(say("inTheArchive", { pieces: photo.shownBy.join(", ") }));
          if (photo.gps) notes.push(say("holdsPlace"));
          label.textContent = notes.length ? `${file.name}: ${notes.join(" ")}` : "";
          if (!notes.length) item.remove();
          // A draft that arrives after the save would bring back what is saved already.
          if (!sending.leaving()) form.dispatchEvent(new Event("draft"));
        }
      } else {
        label.className = "problem";
        label.textContent = (photo?.problem && `${file.name}: ${photo.problem}`) ?? answer?.error ?? say("sendingStopped", { file: file.name });
      }
      sending.arrived(Boolean(photo?.digest));
      done();
    });
    const body = new FormData();
    body.append("files", file);
    request.open("POST", "/photos");
    request.send(body);
  });

  const addRow = (photo, name) => {
    const index = [...rows.querySelectorAll("input[name$='.photo']")]
      .map((each) => Number(each.name.split(".")[1])).reduce((a, b) => Math.max(a, b + 1), 0);
    const start = `photos.${index}`;
    const row = document.createElement("div");
    row.className = "photo-row";
    const picture = document.createElement("img");
    picture.width = 96;
    picture.height = 96;
    picture.alt = "";
    if (photo.preview) picture.src = photo.preview;
    const fields = document.createElement("div");
    const hidden = (field, value) => {
      const made = document.createElement("input");
      made.type = "hidden";
      made.name = `${start}.${field}`;
      made.value = value;
      return made;
    };
    fields.append(hidden("photo", photo.digest), hidden("state", "1"));
    const labelled = (field, text, control) => {
      const box = document.createElement("div");
      box.className = "field";
      const label = document.createElement("label");
      control.id = `f-photos-${index}-${field}`;
      control.name = `${start}.${field}`;
      label.htmlFor = control.id;
      label.textContent = text;
      box.append(label, control);
      return box;
    };
    const role = document.createElement("select");
    for (const choice of rows.dataset.roles.split("|")) {
      const [word, text] = choice.split("=");
      role.append(new Option(text, word, false, word === (index === 0 ? "front" : "detail")));
    }
    const caption = document.createElement("input");
    caption.autocomplete = "off";
    const line = document.createElement("div");
    line.className = "row";
    line.append(labelled(rows.dataset.field ?? "role", say("shows"), role), labelled("caption", say("caption"), caption));
    const leave = document.createElement("label");
    leave.className = "check";
    const box = document.createElement("input");
    box.type = "checkbox";
    box.name = `${start}.leaveOut`;
    box.value = "1";
    leave.append(box, ` ${say("leaveOut")} (${name})`);
    fields.append(line, leave);
    row.append(picture, fields);
    rows.append(row);
  };

  const sendAll = async (files) => {
    const pictures = [...files];
    sending.begin(pictures.length);
    for (let i = 0; i < pictures.length; i += 2) {
      await Promise.all(pictures.slice(i, i + 2).map(send));
    }
    if (form.isConnected && !sending.leaving()) form.querySelector("[data-show-photos]")?.click();
  };
  input.addEventListener("change", async () => {
    const files = [...input.files];
    input.value = "";
    await sendAll(files);
  });
  area.addEventListener("dragover", (event) => { event.preventDefault(); area.classList.add("over"); });
  area.addEventListener("dragleave", () => area.classList.remove("over"));
  area.addEventListener("drop", (event) => {
    event.preventDefault();
    area.classList.remove("over");
    sendAll(event.dataTransfer.files);
  });
  document.addEventListener("paste", (event) => {
    if (event.clipboardData.files.length) {
      event.preventDefault();
      sendAll(event.clipboardData.files);
    }
  });
}

/** Suggestions beneath the search, walked with the arrow keys. */
function suggest(input) {
  const box = document.getElementById("suggestions");
  const look = wait(120, async () => {
    if (!input.value.trim()) { box.hidden = true; return; }
    const answer = await fetch(`${input.dataset.suggest}?q=${encodeURIComponent(input.value)}`);
    const html = await answer.text();
    if (document.activeElement !== input) return;
    box.innerHTML = html;
    box.hidden = !html.trim();
  });
  input.addEventListener("input", look);
  input.form.addEventListener("submit", () => { box.hidden = true; });
  document.addEventListener("click", (event) => { if (!box.contains(event.target)) box.hidden = true; });
  document.addEventListener("keydown", (event) => {
    if (box.hidden) return;
    const links = [...box.querySelectorAll("a")];
    const at = links.indexOf(document.activeElement);
    if (event.key === "Escape") { box.hidden = true; input.focus(); }
    if (event.key === "ArrowDown" && (document.activeElement === input || at >= 0)) { event.preventDefault(); links[Math.min(at + 1, links.length - 1)]?.focus(); }
    if (event.key === "ArrowUp" && at >= 0) { event.preventDefault(); (at === 0 ? input : links[at - 1]).focus(); }
  });
}

/** Marking a part of a photograph by dragging. */
function markParts(marker) {
  const form = document.querySelector("[data-marker-form]");
  const box = marker.querySelector("[data-marking]");
  if (!form) return;
  const fields = ["left", "top", "right", "bottom"].map((id) => form.elements[id]);
  const place = (event) => {
    const frame = marker.getBoundingClientRect();
    const bound = (value) => Math.min(100, Math.max(0, value));
    return [bound(((event.clientX - frame.left) / frame.width) * 100), bound(((event.clientY - frame.top) / frame.height) * 100)];
  };
  const draw = () => {
    const [left, top, right, bottom] = fields.map((field) => Number(field.value.replace(",", ".")) || 0);
    box.setAttribute("x", Math.min(left, right));
    box.setAttribute("y", Math.min(top, bottom));
    box.setAttribute("width", Math.abs(right - left));
    box.setAttribute("height", Math.abs(bottom - top));
  };
  fields.forEach((field) => field.addEventListener("input", draw));
  const way = () => document.querySelector("[data-way]:checked")?.value ?? "rectangle";
  const outline = form.elements.outline;
  const drawing = marker.querySelector("[data-drawing]");
  const corners = document.getElementById("corners");
  const cornersDrawn = marker.querySelector("[data-corners]");
  const cloth = document.getElementById("cloth-corners");
  const clothDrawn = marker.querySelector("[data-cloth]");
  const outlineCloth = (points) => {
    if (!cloth) return;
    cloth.value = points.map(word).join(" ");
    clothDrawn?.setAttribute("points", cloth.value);
  };
  cloth?.addEventListener("input", () => clothDrawn?.setAttribute("points", cloth.value));
  const word = (point) => point.map((value) => value.toFixed(1)).join(",");
  const drawCorners = () => cornersDrawn?.setAttribute("points", corners.value);
  corners?.addEventListener("input", drawCorners);
  outline?.addEventListener("input", () => drawing?.setAttribute("points", outline.value));
  let from = null;
  let drawn = [];
  const tapped = [];
  const search = document.querySelector("[data-place-form]");
  const ring = marker.querySelector("[data-place]");
  marker.addEventListener("pointerdown", (event) => {
    const at = place(event);
    if (way() === "place") {
      const tall = marker.clientHeight / marker.clientWidth;
      Object.entries({ cx: at[0], cy: at[1], rx: 1.5 * Math.min(1, tall), ry: 1.5 * Math.min(1, tall) / tall })
        .forEach(([name, value]) => ring?.setAttribute(name, value));
      search.elements.across.value = at[0].toFixed(1);
      search.elements.down.value = at[1].toFixed(1);
      search.requestSubmit();
      return;
    }
    if (way() === "corners") {
      const now = corners.value.trim() ? corners.value.trim().split(/\s+/) : [];
      corners.value = [...(now.length >= 4 ? [] : now), word(at)].join(" ");
      drawCorners();
      return;
    }
    if (way() === "cloth") {
      tapped.push(at);
      outlineCloth(tapped);
      return;
    }
    from = at;
    drawn = [at];
    marker.setPointerCapture(event.pointerId);
  });
  marker.addEventListener("pointermove", (event) => {
    if (!from) return;
    const to = place(event);
    if (way() === "free") {
      const last = drawn[drawn.length - 1];
      if (Math.hypot(to[0] - last[0], to[1] - last[1]) > 1.2 && drawn.length < 200) drawn.push(to);
      outline.value = drawn.map(word).join(" ");
      drawing.setAttribute("points", outline.value);
      outlineCloth(drawn);
      return;
    }
    outline.value = "";
    drawing?.setAttribute("points", "");
    [Math.min(from[0], to[0]), Math.min(from[1], to[1]), Math.max(from[0], to[0]), Math.max(from[1], to[1])]
      .forEach((value, i) => { fields[i].value = value.toFixed(1); });
    draw();
    outlineCloth([from, [to[0], from[1]], to, [from[0], to[1]]]);
  });
  marker.addEventListener("pointerup", () => { from = null; });
}

/** A photograph to search by: dropped on its form, or anywhere on a page that has no other use for one. */
function searchByPicture(form) {
  const input = form.querySelector("input[type=file]");
  const send = (event) => {
    const files = event.dataTransfer?.files;
    form.classList.remove("over");
    if (!files?.length) return;
    event.preventDefault();
    input.files = files;
    form.requestSubmit();
  };
  document.addEventListener("dragover", (event) => {
    if (event.dataTransfer?.types.includes("Files")) {
      event.preventDefault();
      form.closest("details")?.setAttribute("open", "");
      form.classList.add("over");
    }
  });
  document.addEventListener("dragleave", (event) => { if (!event.relatedTarget) form.classList.remove("over"); });
  document.addEventListener("drop", send);
  input.addEventListener("change", () => { if (input.files.length) form.requestSubmit(); });
}

/** Two states of a cloth under one slider. */
function slide(figure) {
  const range = figure.querySelector("input[type=range]");
  const over = figure.querySelector(".over");
  const draw = () => { over.style.clipPath = `inset(0 0 0 ${range.value}%)`; };
  range.addEventListener("input", draw);
  draw();
}

/** What the parts of a page need when they are first shown; {@code root} is the page or what was replaced in it. */
function prepare(root) {
  for (const input of root.querySelectorAll("input[data-unit]")) if (input.value) understand(input);
  // First, since what is sent or rearranged waits for photographs.
  root.querySelectorAll("form[data-photos]").forEach(takePhotographs);
  root.querySelectorAll("form.record[method=post]").forEach(rearrangeInPlace);
  root.querySelectorAll("form[data-draft]").forEach(keepDrafts);
  root.querySelectorAll("[data-holes]").forEach(placeHoles);
  root.querySelector(".trouble[tabindex]")?.focus();
  // A row that was just added is where typing goes on.
  const start = root.querySelector("form[data-added]")?.dataset.added;
  if (start) {
    const field = [...root.querySelectorAll(`:is(input, select, textarea)[name^="${CSS.escape(start)}"]:not([type=hidden])`)]
      .find((each) => !each.value || !each.name.endsWith(".kind"));
    for (let part = field?.closest("details"); part; part = part.parentElement.closest("details")) part.open = true;
    field?.focus();
    field?.scrollIntoView({ block: "center" });
  }
}

/** What has the focus is scrolled clear of the bar of its form; a browser looks after the caret of a large field alone. */
function clearOfTheBar(event) {
  const bar = event.target.closest?.("form")?.querySelector(".form-end.stays");
  if (!bar || bar.contains(event.target) || getComputedStyle(bar).position !== "sticky") return;
  requestAnimationFrame(() => {
    const field = event.target.getBoundingClientRect();
    const edge = bar.getBoundingClientRect();
    const beside = field.right <= edge.left || field.left >= edge.right;
    if (!beside && field.bottom > edge.top && field.top < edge.bottom) window.scrollBy(0, Math.min(field.bottom - edge.top + 8, field.top - 8));
  });
}

/** Shows a page with what was chosen in its form. It takes the place of the page before, so that Back leaves it at once. */
function choose(form) {
  if (!form.reportValidity()) return;
  for (const issue of document.querySelectorAll(`button[formaction][form="${form.id}"]`)) issue.disabled = true;
  location.replace(`${form.getAttribute("action")}?${new URLSearchParams(new FormData(form))}`);
}

function begin() {
  prepare(document);
  document.addEventListener("input", (event) => { if (event.target.dataset?.unit) understandSoon(event.target); });
  document.addEventListener("focusin", clearOfTheBar);
  handOver();
  document.querySelectorAll("input[data-suggest]").forEach(suggest);
  document.querySelectorAll("[data-marker]").forEach(markParts);
  document.querySelectorAll("[data-picture-drop]").forEach(searchByPicture);
  document.querySelectorAll("[data-slider]").forEach(slide);
  document.body.addEventListener("htmx:load", (event) => event.detail.elt.querySelectorAll("[data-slider]").forEach(slide));
  document.addEventListener("change", (event) => {
    const { target } = event;
    if (/^steps\.\d+\.kind$/.test(target.name ?? "")) showAnew(target.form, `show ${target.name.slice(0, -5)}`);
    if (target.name === "earlier") document.querySelector("input[name=dyeing][value=earlier]").checked = true;
  });
  for (const form of document.querySelectorAll("form[data-resubmit]")) {
    // A change that is noticed because ‘Make the PDF’ was pressed must not take the page away beneath the press.
    const issue = document.querySelector(`button[formaction][form="${form.id}"]`);
    let pressing = false;
    issue?.addEventListener("pointerdown", () => { pressing = true; });
    document.addEventListener("pointerup", () => setTimeout(() => { pressing = false; }, 0));
    form.addEventListener("change", () => { if (!pressing) choose(form); });
  }
  // What is being laid out anew cannot be issued before it is seen.
  for (const issue of document.querySelectorAll("button[formaction][form]")) {
    issue.form.addEventListener("submit", (event) => { if (event.submitter !== issue) issue.disabled = true; });
  }
  const well = document.getElementById("colour-well");
  well?.addEventListener("change", () => {
    document.getElementById("colour").value = well.value;
  });
  // A search that is typed on, or asked for twice, is one page to go back from.
  let searching = false;
  document.body.addEventListener("htmx:beforeHistoryUpdate", (event) => {
    const typing = event.detail.elt?.id === "finder";
    if (typing && searching && event.detail.history.type === "push") event.detail.history.type = "replace";
    searching = typing;
  });
  // Empty fields stay out of the address, so that it is short enough to share.
  document.body.addEventListener("htmx:configRequest", (event) => {
    if (event.detail.elt.id !== "finder") return;
    for (const name of [...event.detail.formData.keys()]) {
      if (event.detail.formData.get(name) === "") event.detail.formData.delete(name);
    }
    const now = new URL(location.href).searchParams;
    for (const name of new Set(now.keys())) {
      if (name !== "page" && !event.detail.elt.querySelector(`[name="${name}"]`)) {
        for (const value of now.getAll(name)) event.detail.formData.append(name, value);
      }
    }
  });
}

begin();
