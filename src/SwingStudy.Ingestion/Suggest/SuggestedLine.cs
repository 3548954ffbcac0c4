namespace SwingStudy.Ingestion.Suggest;

/// <summary>One line of a drafted mapping.</summary>
/// <param name="Key">What it says, as its place in the mapping: <c>values.ball_speed</c>, <c>time.format</c>, <c>ignore.Remark 2</c>.</param>
/// <param name="Text">What the draft puts there.</param>
/// <param name="Confidence">From 0 (a guess that a person must settle) to 1 (certain).</param>
/// <param name="Reason">What it rests on.</param>
public sealed record SuggestedLine(string Key, string Text, double Confidence, string Reason);
