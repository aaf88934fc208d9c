// The line to the program. While it is cut, nothing pressed is lost without a word: every button asks for the line again, and
// where the program has forgotten the page, the page is loaded afresh and what was typed is put back.
(() => {
  for (const button of document.querySelectorAll("[data-print]")) {
    button.hidden = false;
    button.addEventListener("click", () => print());
  }

  const note = document.getElementById("components-reconnect-modal");
  if (!note) return;
  const words = note.querySelector("[data-words]");
  const { still, lost } = note.dataset;
  let cut = false, knocking = false;

  const keep = event => {
    const form = event.target.closest && event.target.closest("form[data-kept]");
    if (!form) return;
    const typed = {};
    for (const field of form.querySelectorAll("input[id], select[id], textarea[id]")) {
      if (field.type !== "file") typed[field.id] = field.type === "checkbox" ? (field.checked ? "yes" : "") : field.value;
    }
    try { sessionStorage.setItem("typed:" + form.dataset.kept, JSON.stringify(typed)); } catch { /* full or forbidden: the page still works */ }
  };
  document.addEventListener("input", keep);
  document.addEventListener("change", keep);

  async function knock() {
    if (knocking) return;
    knocking = true;
    try {
      if (!(await Blazor.reconnect())) location.reload();
    } catch {
      try { if ((await fetch("health/live", { cache: "no-store" })).ok) location.reload(); } catch { words.textContent = still; }
    } finally {
      knocking = false;
    }
  }

  note.addEventListener("components-reconnect-state-changed", event => {
    const state = event.detail.state;
    cut = state !== "hide";
    document.documentElement.classList.toggle("line-cut", cut);
    if (state === "show") words.textContent = lost;
    if (state === "rejected" || state === "resume-failed") location.reload();
    if (state === "failed") setTimeout(function again() { if (cut) { knock(); setTimeout(again, 4000); } }, 500);
  });

  document.addEventListener("click", event => {
    if (!cut || !event.target.closest("button, summary, [role=button]")) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    words.textContent = still;
    knock();
  }, true);
})();
