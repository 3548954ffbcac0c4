namespace SwingStudy.Domain.Curves;

/// <summary>A point on player or club that motion capture follows.</summary>
/// <param name="Name">Snake-case name; its channels are <c>NAME_x</c> (to the target), <c>NAME_y</c> (up) and <c>NAME_z</c> (to the right, facing the
/// target), in metres in the laboratory frame.</param>
/// <param name="Title">What a person calls it.</param>
public sealed record Landmark(string Name, string Title)
{
    /// <summary>Channels of the three coordinates.</summary>
    public IReadOnlyList<string> Channels { get; } = [Name + "_x", Name + "_y", Name + "_z"];
}
