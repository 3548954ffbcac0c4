namespace SwingStudy.Domain.Sources;

/// <summary>Whose load the numbers of a plate are.</summary>
public enum LoadDirection
{
    /// <summary>The reaction on the player: positive upward under a standing player once axes are mapped.</summary>
    OnPlayer,

    /// <summary>The load of the player on the plate: all forces and moments are turned at intake.</summary>
    OnPlate,
}
