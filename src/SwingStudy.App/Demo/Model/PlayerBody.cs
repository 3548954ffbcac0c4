namespace SwingStudy.App.Demo.Model;

/// <summary>An invented player's body.</summary>
/// <param name="Mass">Player with club, kg.</param>
/// <param name="Stature">Height, m.</param>
/// <param name="LeftHanded">Stands on the other side of the ball and faces the other way.</param>
internal sealed record PlayerBody(double Mass, double Stature, bool LeftHanded = false)
{
    /// <summary>Standing weight, N.</summary>
    public double Weight => Mass * Pulse.Gravity;
}
