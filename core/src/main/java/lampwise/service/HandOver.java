package lampwise.service;

import java.util.Optional;

/**
 * What waits at a fixture for somebody else.
 *
 * @param fixture the fixture
 * @param who whom it waits for
 * @param job the job; empty where it waits from an earlier visit and nothing is known of today
 * @param visit the visit that left it so; empty if today's job did
 */
public record HandOver(Fixture fixture, Who who, Optional<Job> job, Optional<Visit> visit) {}
