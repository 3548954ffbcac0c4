namespace SwingStudy.Pipeline.Running;

/// <summary>Which rows of an input table concern one unit of work.</summary>
public enum Slice
{
    /// <summary>Rows of the player whose <c>struck_at</c> lies in the unit's time.</summary>
    SameTime,

    /// <summary>Rows that an earlier stage wrote for the unit of the same name.</summary>
    SameUnit,

    /// <summary>Rows of the player.</summary>
    SameParticipant,

    /// <summary>Rows of the files from which captures of the player were read.</summary>
    SameOriginals,

    /// <summary>All rows.</summary>
    WholeTable,
}
