// Drawing, tape and table row of one part light up together on hover, focus and tap. The page is complete without it.
(() => {
  const part = e => e.target.closest && e.target.closest("[data-part]");
  const light = name => {
    document.querySelectorAll(".lit").forEach(e => e.classList.remove("lit"));
    document.querySelectorAll(".hat").forEach(e => e.classList.toggle("lit-up", !!name));
    if (name) document.querySelectorAll(`[data-part="${CSS.escape(name)}"]`).forEach(e => e.classList.add("lit"));
  };
  for (const event of ["pointerover", "focusin", "click"]) {
    document.addEventListener(event, e => { const p = part(e); light(p ? p.dataset.part : null); });
  }
  document.addEventListener("focusout", () => light(null));
})();
