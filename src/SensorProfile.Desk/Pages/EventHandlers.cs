using Microsoft.AspNetCore.Components;

namespace SensorProfile.Desk.Pages;

/// <summary>The place where a picture was pressed, from 0 at its upper left corner to 1; sent by <c>desk.js</c>.</summary>
public sealed class PickEventArgs : EventArgs
{
    /// <summary>From the left edge.</summary>
    public double Right { get; set; }

    /// <summary>From the upper edge.</summary>
    public double Down { get; set; }
}

/// <summary>Registers the event <c>onpick</c> with the Razor compiler.</summary>
[EventHandler("onpick", typeof(PickEventArgs), enableStopPropagation: true, enablePreventDefault: true)]
public static class EventHandlers;
