namespace SwingStudy.App.Studies;

/// <summary>One line of two compared texts.</summary>
/// <param name="Change">What became of it.</param>
/// <param name="First">Its number in the first text; null when it is not there.</param>
/// <param name="Second">Its number in the second text; null when it is not there.</param>
/// <param name="Text">The line.</param>
internal sealed record DifferingLine(LineChange Change, int? First, int? Second, string Text);
