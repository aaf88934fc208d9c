// Drawing, tape, strip and table row of one part light up together: on hover, on focus, on tap, and by the arrow keys in the drawing.
// What is tapped or stepped to stays lit until it is let go. The page is complete without it.
(() => {
  const partOf = e => e.target instanceof Element ? e.target.closest("[data-part]")?.dataset.part ?? null : null;
  const all = name => document.querySelectorAll(`[data-part="${CSS.escape(name)}"]`);
  let kept = null;

  const light = name => {
    document.querySelectorAll(".lit").forEach(e => e.classList.remove("lit"));
    if (name) all(name).forEach(e => e.classList.add("lit"));
    document.querySelectorAll(".hat").forEach(e => e.classList.toggle("lit-up", !!e.querySelector(".lit")));
    const row = name && document.querySelector(`.row[data-part="${CSS.escape(name)}"][data-told]`);
    for (const held of document.querySelectorAll(".held")) {
      held.hidden = !row;
      if (row) {
        const [code, text] = [row.querySelector(".code")?.cloneNode(true) ?? "", document.createElement("span")];
        const part = document.createElement("b"), more = document.createElement("small");
        [part.textContent, more.textContent] = [row.dataset.part, row.dataset.more];
        text.append(part, " " + row.dataset.told.slice(row.dataset.part.length + 2), more);
        held.replaceChildren(code, text);
      }
    }
    const words = name && document.querySelector(`.hat [data-part="${CSS.escape(name)}"] > title`)?.textContent;
    document.querySelectorAll(".lit-line").forEach(e => {
      if (words) e.dataset.lit = words[0].toUpperCase() + words.slice(1);
      else delete e.dataset.lit;
    });
  };
  const keep = name => light(kept = name);
  document.addEventListener("part:keep", e => keep(e.detail));

  document.addEventListener("pointerover", e => light(partOf(e) ?? kept));
  document.documentElement.addEventListener("pointerleave", () => light(kept));
  document.addEventListener("focusin", e => { const name = partOf(e); if (name) light(name); });
  document.addEventListener("focusout", e => e.target instanceof Element && e.target.matches(".drawing") ? keep(null) : light(kept));
  document.addEventListener("click", e => {
    // A control in a row does what it says; it keeps nothing lit.
    if (e.target instanceof Element && e.target.closest(".can-i-make, a, button, select, input, label, summary")) return;
    const name = partOf(e);
    keep(name === kept ? null : name);
  });

  // A new answer is shown whole, wherever the focus was put back to.
  document.addEventListener("answered", () => keep(null));
  document.addEventListener("keydown", e => {
    if (e.key === "Escape") { keep(null); return; }
    if (!(e.target instanceof Element) || !e.target.matches(".drawing[data-order]") || e.ctrlKey || e.altKey || e.metaKey) return;
    const order = e.target.dataset.order.split("|");
    const at = order.indexOf(kept);
    const to = { ArrowRight: at + 1, ArrowDown: at + 1, ArrowLeft: Math.max(at, 0) - 1, ArrowUp: Math.max(at, 0) - 1, Home: 0, End: -1 }[e.key];
    if (to === undefined) return;
    e.preventDefault();
    keep(order[(to + order.length) % order.length]);
  });
})();
