namespace SwingStudy.App.Demo;

/// <summary>A misread of the bay sensor.</summary>
internal enum Misread
{
    /// <summary>Both speeds are read rightly.</summary>
    None,

    /// <summary>The ball's speed is read twice as high.</summary>
    BallDoubled,

    /// <summary>The sensor catches the hosel late: club speed is read too low.</summary>
    ClubLow,
}
