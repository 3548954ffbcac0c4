namespace SwingStudy.App.Demo;

/// <summary>By how much one swing differs from the one that the player means.</summary>
/// <param name="Faster">Share by which the downswing is quicker.</param>
/// <param name="PushTime">By how much later the vertical force comes, s.</param>
/// <param name="PushSize">By how much more it exceeds body weight, in body weights.</param>
internal readonly record struct SwingScatter(double Faster, double PushTime, double PushSize);
