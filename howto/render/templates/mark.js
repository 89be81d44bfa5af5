"use strict";
(() => {
  const file = document.querySelector(".over").textContent.trim();
  const board = document.getElementById("board");
  const photo = document.getElementById("photo");
  const cross = document.getElementById("cross");
  const discs = document.getElementById("discs");
  const points = document.getElementById("points");
  const lines = document.getElementById("lines");
  const said = document.getElementById("said");
  const asMark = document.getElementById("as-mark");
  const asFocus = document.getElementById("as-focus");
  let marks = [];
  let focus = { x: 50, y: 50 };
  let at = { x: 50, y: 50 };
  let focusing = false;

  const whole = (value) => Math.min(100, Math.max(0, Math.round(value)));
  const placed = (node, x, y) => {
    node.style.left = x + "%";
    node.style.top = y + "%";
    return node;
  };
  const text = () => {
    const out = ["   - Picture: " + file];
    if (focus.x !== 50 || focus.y !== 50) out.push("     - focus: " + focus.x + " " + focus.y);
    out.push("     - alt: say what the picture shows");
    marks.forEach((mark) => out.push("     - " + mark.x + " " + mark.y + ": " + (mark.text || "say what is here")));
    return out.join("\n") + "\n";
  };
  const disc = (words, x, y, kind) => {
    const node = placed(document.createElement("div"), x, y);
    node.className = "disc" + kind;
    node.textContent = words;
    node.setAttribute("aria-hidden", "true");
    return node;
  };
  const drawDiscs = () => {
    discs.replaceChildren(...marks.map((mark, n) => disc(n + 1, mark.x, mark.y, "")));
    if (focusing || focus.x !== 50 || focus.y !== 50) discs.append(disc("F", focus.x, focus.y, " focus"));
  };
  const drawPoints = () => {
    points.replaceChildren(
      ...marks.map((mark, n) => {
        const item = document.createElement("li");
        const number = document.createElement("b");
        number.textContent = n + 1;
        const where = document.createElement("span");
        where.textContent = mark.x + " " + mark.y;
        const input = document.createElement("input");
        input.value = mark.text;
        input.setAttribute("aria-label", "What mark " + (n + 1) + " shows");
        input.addEventListener("input", () => {
          mark.text = input.value.replace(/\s+/g, " ").trim();
          lines.value = text();
        });
        const remove = document.createElement("button");
        remove.type = "button";
        remove.className = "plain";
        remove.textContent = "Remove";
        remove.setAttribute("aria-label", "Remove mark " + (n + 1));
        remove.addEventListener("click", () => {
          marks = marks.filter((other) => other !== mark);
          draw();
          said.textContent = "Mark " + (n + 1) + " removed.";
          board.focus();
        });
        item.append(number, where, input, remove);
        return item;
      })
    );
  };
  const draw = () => {
    drawDiscs();
    drawPoints();
    lines.value = text();
  };
  const set = (x, y) => {
    if (focusing) {
      focus = { x, y };
      said.textContent = "Focus at " + x + " " + y + ".";
    } else {
      marks.push({ x, y, text: "" });
      said.textContent = "Mark " + marks.length + " at " + x + " " + y + ".";
    }
    draw();
  };
  const mode = (wanted) => {
    focusing = wanted;
    asMark.setAttribute("aria-pressed", String(!wanted));
    asFocus.setAttribute("aria-pressed", String(wanted));
    drawDiscs();
  };
  const showCross = () => {
    cross.hidden = false;
    cross.querySelector(".x").style.left = at.x + "%";
    cross.querySelector(".y").style.top = at.y + "%";
  };

  asMark.addEventListener("click", () => mode(false));
  asFocus.addEventListener("click", () => mode(true));
  board.addEventListener("click", (event) => {
    const box = photo.getBoundingClientRect();
    at = { x: whole(((event.clientX - box.left) / box.width) * 100), y: whole(((event.clientY - box.top) / box.height) * 100) };
    cross.hidden = true;
    set(at.x, at.y);
  });
  board.addEventListener("keydown", (event) => {
    const step = event.shiftKey ? 10 : 1;
    const moves = { ArrowLeft: [-step, 0], ArrowRight: [step, 0], ArrowUp: [0, -step], ArrowDown: [0, step] };
    if (event.key in moves) {
      const [x, y] = moves[event.key];
      at = { x: whole(at.x + x), y: whole(at.y + y) };
      showCross();
      said.textContent = at.x + " " + at.y;
      event.preventDefault();
    } else if (event.key === "Enter" || event.key === " ") {
      set(at.x, at.y);
      event.preventDefault();
    }
  });
  document.getElementById("copy").addEventListener("click", () => {
    const told = () => { said.textContent = "Copied."; };
    lines.focus();
    lines.select();
    if (navigator.clipboard && window.isSecureContext) navigator.clipboard.writeText(lines.value).then(told, () => document.execCommand("copy") && told());
    else if (document.execCommand("copy")) told();
  });
  draw();
})();
