namespace SwingStudy.App.Demo.Model;

/// <summary>One way of swinging: everything from which a swing follows.</summary>
/// <param name="Body">The player's body.</param>
/// <param name="Club">The club.</param>
/// <param name="Hands">Arms and wrists.</param>
/// <param name="Feet">Use of the ground.</param>
internal sealed record SwingStyle(PlayerBody Body, Club Club, HandDrive Hands, FootWork Feet);
