namespace SwingStudy.App.Demo;

/// <summary>Devices that follow the movement of a player.</summary>
[Flags]
internal enum MovementDevices
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>Two force plates.</summary>
    Plates = 1,

    /// <summary>Cameras that see markers.</summary>
    Markers = 2,
}
