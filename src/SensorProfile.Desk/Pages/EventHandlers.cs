using Microsoft.AspNetCore.Components;

namespace SensorProfile.Desk.Pages;

/// <summary>A place of a picture that was pressed, from 0 at its upper left corner to 1; <c>desk.js</c> makes it.</summary>
public sealed class PickEventArgs : EventArgs
{
    /// <summary>From the left edge.</summary>
    public double Right { get; set; }

    /// <summary>From the upper edge.</summary>
    public double Down { get; set; }
}

/// <summary>Tells the compiler of pages the event <c>onpick</c>.</summary>
[EventHandler("onpick", typeof(PickEventArgs), enableStopPropagation: true, enablePreventDefault: true)]
public static class EventHandlers;
