namespace SwingStudy.Pipeline.Measure.Curves;

/// <summary>What a measure cannot do without.</summary>
[Flags]
internal enum MeasureNeeds
{
    None = 0,

    /// <summary>Body weight of the session.</summary>
    Weight = 1,

    /// <summary>Places in the laboratory of the plates it rests on.</summary>
    Places = 2,

    /// <summary>Whether the player swings right- or left-handed.</summary>
    Side = 4,

    /// <summary>Address.</summary>
    Address = 8,

    /// <summary>Start of the swing.</summary>
    Start = 16,

    /// <summary>Top of the backswing.</summary>
    Top = 32,

    /// <summary>Beginning of the downswing: the top, or without marks the least vertical force.</summary>
    Downswing = 64,

    /// <summary>Peak of grip speed.</summary>
    GripPeak = 128,

    /// <summary>Marks of the pelvis.</summary>
    Pelvis = 256,

    /// <summary>Marks of the trunk, which take those of the pelvis.</summary>
    Trunk = 512,

    /// <summary>A plate of the lead foot's own.</summary>
    Lead = 1024,

    /// <summary>A plate of the trail foot's own.</summary>
    Trail = 2048,

    /// <summary>Plates under both feet, one or two.</summary>
    Total = 4096,
}
