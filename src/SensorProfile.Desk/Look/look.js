// The light of the page, before anything is drawn.
(() => {
  const root = document.documentElement;
  const kept = () => { try { return localStorage.getItem("desk-look") || "system"; } catch { return "system"; } };
  const show = look => { root.dataset.look = look; };
  show(kept());
  document.addEventListener("change", event => {
    if (event.target.id !== "look") return;
    show(event.target.value);
    try { localStorage.setItem("desk-look", event.target.value); } catch { /* not kept, then */ }
  });
  // the page is drawn anew by the program: the choice is put back in
  new MutationObserver(() => {
    const choice = document.getElementById("look");
    if (choice && !choice.dataset.set) { choice.value = root.dataset.look; choice.dataset.set = "yes"; }
  }).observe(root, { childList: true, subtree: true });
})();
