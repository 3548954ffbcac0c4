namespace SwingStudy.Pipeline.Running;

/// <summary>Which rows of an input table concern one unit of work.</summary>
public enum Slice
{
    /// <summary>Rows of the unit's players, and in a session or day those that name nobody, whose time lies in the unit's: <c>struck_at</c>, or
    /// <c>recorded_at</c> where the device does not tell the moment of impact.</summary>
    SameTime,

    /// <summary>Rows that an earlier stage wrote for the unit of the same name.</summary>
    SameUnit,

    /// <summary>Rows of the captures that the unit sees; the stage reads <c>captures</c> as well.</summary>
    SameCaptures,

    /// <summary>Rows of the player.</summary>
    SameParticipant,

    /// <summary>Rows of the files from which captures of the player were read.</summary>
    SameOriginals,

    /// <summary>All rows.</summary>
    WholeTable,

    /// <summary>All rows, but for files in which every number that is read is missing: a study holds thousands of recordings that carry curves and no values.</summary>
    WithValues,
}
