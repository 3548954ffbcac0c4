namespace SwingStudy.Domain.Protocols;

/// <summary>How a study stands to an edition of design standards.</summary>
public enum StandardRating
{
    /// <summary>It meets what can be judged.</summary>
    Meets,

    /// <summary>It meets it with reservations.</summary>
    WithReservations,

    /// <summary>It does not meet it.</summary>
    DoesNot,

    /// <summary>The edition does not cover the design.</summary>
    NotCovered,
}
