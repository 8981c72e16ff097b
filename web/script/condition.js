// Marking an examination's photographs by tapping. Without this, places are typed in percent.

const SVG = "http://www.w3.org/2000/svg";
const PLACE = /^\s*([\d.]+)\s*%?\s*[,; ]\s*([\d.]+)\s*%?(?:[\s;,to]+([\d.]+)\s*%?\s*[,; ]\s*([\d.]+)\s*%?)?\s*$/;

/** The corners a field means, in percent; null while it means none. */
const read = (text) => {
  const found = PLACE.exec(text);
  if (!found) return null;
  const numbers = found.slice(1).filter((each) => each !== undefined).map(Number);
  return numbers.some((each) => Number.isNaN(each) || each > 100) ? null : numbers;
};

const made = (name, attributes) => {
  const element = document.createElementNS(SVG, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  return element;
};

/** Draws one mark as the server does: the disc with its number keeps its size whatever the picture's. */
function drawn(svg, number, at) {
  const [x1, y1, x2, y2] = at;
  const area = x2 !== undefined;
  const left = area ? Math.min(x1, x2) : x1;
  const top = area ? Math.min(y1, y2) : y1;
  if (area) {
    for (const name of ["mark-area", "mark-area inner"]) {
      svg.append(made("rect", { class: name, x: `${left}%`, y: `${top}%`, width: `${Math.abs(x2 - x1)}%`, height: `${Math.abs(y2 - y1)}%` }));
    }
  }
  const across = area ? (left < 4 ? 14 : 0) : (left > 88 ? -18 : 18);
  const down = area ? (top < 4 ? 14 : 0) : (top < 12 ? 18 : -18);
  const mark = made("svg", { class: "mark", x: `${left}%`, y: `${top}%`, overflow: "visible" });
  if (!area) mark.append(made("path", { class: "mark-line", d: `M0 0L${across} ${down}` }), made("circle", { class: "mark-spot", r: 4.5 }));
  mark.append(made("circle", { class: "mark-disc", cx: across, cy: down, r: 13 }));
  const text = made("text", { x: across, y: down, dy: "0.36em", "text-anchor": "middle" });
  text.textContent = number;
  mark.append(text);
  svg.append(mark);
}

function condition(form) {
  const list = form.querySelector("[data-observations]");
  const fresh = form.querySelector("template[data-new-observation]");
  const frames = [...form.querySelectorAll("[data-plate]")];
  const said = form.querySelector("[data-mark-said]");
  if (!list || !fresh || !frames.length) return;
  let armed = null;

  const rows = () => [...list.querySelectorAll("[data-observation]")];
  const marks = (row) => [...row.querySelectorAll(".mark-row")]
    .map((each) => ({ photo: each.querySelector("select"), at: each.querySelector("input") }));
  const say = (key, number) => document.getElementById("sentences").dataset[key].replace("{number}", number);
  const tell = (sentence) => { if (said) said.textContent = sentence; };

  const draw = () => {
    for (const frame of frames) {
      const svg = frame.querySelector("svg");
      svg.replaceChildren();
      for (const row of rows()) {
        for (const { photo, at } of marks(row)) {
          const place = photo.value === frame.dataset.plate ? read(at.value) : null;
          if (place) drawn(svg, row.dataset.number, place);
        }
      }
    }
  };

  /** Where tapping does it, what is typed in percent steps back. */
  const byTapping = (row) => {
    row.querySelector("[data-arm]").hidden = false;
    if (!row.querySelector("[data-marks] .problem")) row.querySelector("[data-marks-shown]").open = false;
  };

  /** A row like the server's, under the next free place and number. */
  const add = () => {
    const index = rows().map((row) => Number(row.querySelector("[name$='.number']").name.split(".")[1])).reduce((a, b) => Math.max(a, b + 1), 0);
    const number = rows().map((row) => Number(row.dataset.number)).reduce((a, b) => Math.max(a, b + 1), Number(form.dataset.next));
    const holder = document.createElement("ol");
    holder.innerHTML = fresh.innerHTML.replaceAll(/\b9999\b/g, index).replaceAll(/\b9998\b/g, number);
    const row = holder.firstElementChild;
    list.append(row);
    byTapping(row);
    form.querySelector("[data-nothing-seen]")?.remove();
    return row;
  };

  const put = (photo, at) => {
    const row = armed ?? add();
    const there = marks(row).find((mark) => mark.photo.value === photo) ?? marks(row).find((mark) => !mark.at.value.trim());
    if (there) {
      there.photo.value = photo;
      there.at.value = at;
    } else {
      const one = row.querySelector(".mark-row");
      const count = marks(row).length;
      const holder = document.createElement("div");
      holder.innerHTML = one.outerHTML.replaceAll(/marks([.-])\d+/g, `marks$1${count}`);
      row.querySelector("[data-marks]").append(holder.firstElementChild);
      const added = marks(row)[count];
      added.photo.value = photo;
      added.at.value = at;
    }
    tell(say("marked", row.dataset.number));
    armed = null;
    draw();
    form.dispatchEvent(new Event("draft"));
    const what = row.querySelector("[name$='.what']");
    if (!what.value) what.focus({ preventScroll: true });
    row.scrollIntoView({ block: "nearest" });
  };

  const place = (frame, event) => {
    const box = frame.getBoundingClientRect();
    const part = (value) => (Math.min(1, Math.max(0, value)) * 100).toFixed(1);
    return `${part((event.clientX - box.left) / box.width)},${part((event.clientY - box.top) / box.height)}`;
  };
  const areas = () => form.querySelector("[data-mark-way]:checked")?.value === "area";

  for (const frame of frames) {
    let from = null;
    frame.addEventListener("click", (event) => { if (!areas()) put(frame.dataset.plate, place(frame, event)); });
    frame.addEventListener("pointerdown", (event) => {
      if (!areas()) return;
      from = place(frame, event);
      frame.setPointerCapture(event.pointerId);
    });
    frame.addEventListener("pointermove", (event) => {
      if (!from) return;
      draw();
      drawn(frame.querySelector("svg"), armed?.dataset.number ?? "+", read(`${from} ${place(frame, event)}`));
    });
    frame.addEventListener("pointerup", (event) => {
      if (!from) return;
      const to = place(frame, event);
      const at = to === from ? from : `${from} ${to}`;
      from = null;
      put(frame.dataset.plate, at);
    });
    frame.addEventListener("pointercancel", () => { from = null; draw(); });
  }
  form.addEventListener("change", (event) => {
    if (event.target.matches("[data-mark-way]")) frames.forEach((frame) => frame.classList.toggle("areas", areas()));
  });
  form.addEventListener("click", (event) => {
    const button = event.target.closest("[data-arm]");
    if (!button) return;
    armed = button.closest("[data-observation]");
    tell(say("tap", armed.dataset.number));
    form.querySelector("[data-mark-help]").scrollIntoView({ block: "start" });
  });
  list.addEventListener("input", draw);
  list.addEventListener("change", draw);
  rows().forEach(byTapping);
  form.querySelector("[data-mark-help]").hidden = false;
  frames.forEach((frame) => frame.classList.add("markable"));
}

document.querySelectorAll("form[data-condition]").forEach(condition);
// Where rows were added or photographs taken in, the form is another one.
document.addEventListener("tenterbook:replaced", (event) => event.detail.querySelectorAll("form[data-condition]").forEach(condition));
