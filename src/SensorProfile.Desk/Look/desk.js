// Where a picture was pressed, as shares of its sides.
Blazor.registerCustomEventType("pick", {
  browserEventName: "click",
  createEventArgs: event => {
    const box = event.target.closest("svg").getBoundingClientRect();
    return { right: (event.clientX - box.left) / box.width, down: (event.clientY - box.top) / box.height };
  }
});
